import type { Construction } from '../documents/kinds.ts';
import { readQuantity } from '../quantity/quantity.ts';
import type { ComparedFactor, FactorState } from '../result/comparison.ts';
import type { Fact } from './facts.ts';
import { unitNamesOf } from './units.ts';

/** A relative difference that passes as equal where masses are concerned. */
const MASS_TOLERANCE = 0.005;

/**
 * The state of every factor that any sample records. Two states of the same factor are equal only where every sample
 * records it; what is declared or listed as a consequence by any of the constructions counts as such.
 *
 * @param facts of each sample, in their order
 * @param despite reasons for which differences are put aside, by the factor's name
 */
export function factorStates(
  facts: readonly (readonly Fact[])[],
  constructions: readonly Pick<Construction, 'declared' | 'consequences'>[],
  despite: ReadonlyMap<string, string>,
): ComparedFactor[] {
  const keys = new Map<string, Pick<Fact, 'name' | 'group'>>();
  for (const fact of facts.flat()) keys.set(`${fact.group}\n${fact.name}`, fact);
  const declared = constructions.flatMap((construction) => construction.declared);
  const consequences = constructions.flatMap((construction) => construction.consequences ?? []);
  return [...keys.values()].map(({ name, group }) => {
    const own = facts.map((all) => all.find((fact) => fact.group === group && fact.name === name) ?? null);
    const bare = stateOf(own);
    const isNamed = (paths: readonly string[]) =>
      group === 'construction' && paths.some((path) => name === path || name.startsWith(`${path}.`));
    const named: FactorState =
      bare === 'equal' ? bare : isNamed(declared) ? 'declared' : isNamed(consequences) ? 'consequence' : bare;
    return {
      name,
      group,
      state: named,
      values: own.map((fact) => fact?.shown ?? null),
      note: named === 'differs' ? noteOf(own) : null,
      despite: named === 'differs' ? (despite.get(name) ?? null) : null,
    };
  });
}

function stateOf(facts: readonly (Fact | null)[]): 'equal' | 'differs' | 'unknown' {
  const known = facts.filter((fact): fact is Fact => fact !== null && fact.shown !== null);
  const [first] = known;
  const differ = first !== undefined && known.some((fact) => known.some((other) => !isSame(fact, other)));
  if (differ) return 'differs';
  return known.length === facts.length ? 'equal' : 'unknown';
}

function isSame(a: Fact, b: Fact): boolean {
  if (a.value !== null && b.value !== null) {
    const room = Math.max(a.tolerance ?? 0, b.tolerance ?? 0);
    return Math.abs(a.value - b.value) <= room + 1e-9 * Math.abs(a.value);
  }
  return a.shown === b.shown || sameQuantity(a.name, a.shown!, b.shown!);
}

/** `905 g` and `0.905 kg` are one mass; two masses within 0.5 % are equal, other quantities only where they agree. */
function sameQuantity(name: string, a: string, b: string): boolean {
  for (const unit of unitNamesOf(a)) {
    const [x, y] = [readQuantity(a, unit), readQuantity(b, unit)];
    if (!x.ok || !y.ok) continue;
    const share = /(?:^|\.)mass$/.test(name) ? MASS_TOLERANCE : 1e-9;
    return (
      Math.abs(x.value.value - y.value.value) <=
      share * Math.max(Math.abs(x.value.value), Math.abs(y.value.value))
    );
  }
  return false;
}

/** Values that no two samples share cannot be told from the construction by any statistics. */
function noteOf(facts: readonly (Fact | null)[]): string | null {
  if (facts.some((fact) => fact?.members === undefined)) return null;
  const sets = facts.map((fact) => new Set(fact!.members));
  const disjoint = sets.every((set, i) =>
    sets.every((other, k) => k === i || ![...set].some((member) => other.has(member))),
  );
  return disjoint
    ? 'goes together with the construction: nothing in the data can tell the two apart'
    : 'shared in part only';
}
