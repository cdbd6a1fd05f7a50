import type { ImpactProtocol } from '../documents/kinds.ts';
import type { ComparedFactor } from '../result/comparison.ts';

/** How the protocols of several drop tests go together. */
export interface MethodsTogether {
  /** Why they may not be compared whatever the reasons given; empty where they may. */
  readonly refused: readonly string[];
  /** Whether only single hits on fresh tyres can be compared, and why; null as a rule. */
  readonly bySingleHits: string | null;
}

/**
 * Tests by one method are compared. Rising heights from different starts or in different steps, and tyres that each hit
 * takes something from, only by what a single hit does to a fresh tyre.
 */
export function methodsTogether(protocols: readonly ImpactProtocol[]): MethodsTogether {
  const methods = [...new Set(protocols.map(({ method }) => method))];
  if (methods.length > 1) {
    const why = `different methods (${methods.join(', ')}): they look at strength in different ways; test by one method`;
    return { refused: [why], bySingleHits: null };
  }
  if (protocols.some(({ damagePerHit }) => (damagePerHit ?? null) !== null)) {
    return { refused: [], bySingleHits: 'each hit takes something from a tyre (damagePerHit)' };
  }
  if (methods[0] !== 'rising-height') return { refused: [], bySingleHits: null };
  const starts = new Set(protocols.map(({ start }) => start));
  const steps = new Set(protocols.map(({ step }) => JSON.stringify(step)));
  if (starts.size === 1 && steps.size === 1) return { refused: [], bySingleHits: null };
  const what = [starts.size > 1 ? 'starts' : null, steps.size > 1 ? 'steps' : null]
    .filter(Boolean)
    .join(' and ');
  return {
    refused: [],
    bySingleHits: `rising-height tests under different ${what}, whose heights of failure hang on them`,
  };
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
