import type { PairComparison } from './all-pairs.ts';

/**
 * Groups that are not told apart: the largest sets within which no pair differs, in order of the means (Piepho 2004, J. Comp. Graph.
 * Stat. 13, 456–466, insert and absorb). A group may stand in several sets; two that stand in none together are told apart.
 *
 * @param order the groups, best first or last
 * @param differ pairs that are told apart
 */
export function groupsNotToldApart(
  order: readonly number[],
  differ: readonly Pick<PairComparison, 'first' | 'second'>[],
): number[][] {
  let sets: number[][] = [[...order]];
  for (const { first: a, second: b } of differ) {
    sets = sets.flatMap((set) =>
      set.includes(a) && set.includes(b)
        ? [set.filter((one) => one !== a), set.filter((one) => one !== b)]
        : [set],
    );
    // A set within another says nothing of its own; of two alike the first stays.
    sets = sets.filter(
      (set, i) =>
        !sets.some(
          (other, j) =>
            j !== i && set.every((one) => other.includes(one)) && (other.length > set.length || j < i),
        ),
    );
  }
  const place = (set: readonly number[]) => set.map((one) => order.indexOf(one));
  return sets.sort((a, b) => Math.min(...place(a)) - Math.min(...place(b)) || a.length - b.length);
}
