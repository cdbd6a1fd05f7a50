import type { ImpactProtocol } from '../documents/kinds.ts';
import type { ComparedFactor } from '../result/comparison.ts';

/** Why samples may not be compared whatever the reasons given: no override reaches these. */
export function methodRefusals(protocols: readonly ImpactProtocol[]): string[] {
  const methods = [...new Set(protocols.map(({ method }) => method))];
  if (methods.length > 1) {
    return [
      `different methods (${methods.join(', ')}): they look at strength in different ways; test by one method`,
    ];
  }
  if (methods[0] !== 'rising-height') return [];
  const starts = new Set(protocols.map(({ start }) => start));
  const steps = new Set(protocols.map(({ step }) => JSON.stringify(step)));
  if (starts.size === 1 && steps.size === 1) return [];
  const what = [starts.size > 1 ? 'starts' : null, steps.size > 1 ? 'steps' : null]
    .filter(Boolean)
    .join(' and ');
  return [
    `rising-height tests under different ${what}: each earlier hit weakens the tyre, so the height of failure depends on them; test under one protocol`,
  ];
}

/** A sentence for each factor that differs and was not put aside. */
export function factorRefusals(factors: readonly ComparedFactor[]): string[] {
  return factors
    .filter(({ state, despite }) => state === 'differs' && despite === null)
    .map(({ name, values, note }) => {
      const found = values.map((value) => value ?? 'not recorded').join(' against ');
      return `${name} differs: ${found}${note === null ? '' : ` (${note})`}`;
    });
}
