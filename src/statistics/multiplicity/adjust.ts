/** Which error is held: `bonferroni`, `holm`, `hochberg` the chance of any false finding; `benjamini-hochberg` their share. */
export type Adjustment = 'bonferroni' | 'holm' | 'hochberg' | 'benjamini-hochberg';

/**
 * Adjusted p-values of several tests, in the order given; a finding stands where the adjusted p is at most the level. Holm (1979)
 * holds for any dependence and is never worse than Bonferroni; Hochberg (1988) and Benjamini & Hochberg (1995) need independent or
 * positively dependent tests.
 *
 * @throws RangeError for a p outside [0, 1]
 */
export function adjust(p: readonly number[], method: Adjustment): number[] {
  for (const one of p) if (!(one >= 0 && one <= 1)) throw new RangeError(`p ${one} is outside [0, 1]`);
  const n = p.length;
  if (method === 'bonferroni') return p.map((one) => Math.min(1, n * one));
  const order = p.map((_, i) => i).sort((a, b) => p[a]! - p[b]!);
  const factor = (rank: number) => (method === 'benjamini-hochberg' ? n / (rank + 1) : n - rank);
  const adjusted = new Array<number>(n);
  if (method === 'holm') {
    let largest = 0;
    for (const [rank, i] of order.entries()) {
      largest = Math.max(largest, factor(rank) * p[i]!);
      adjusted[i] = Math.min(1, largest);
    }
    return adjusted;
  }
  let smallest = 1;
  for (let rank = n - 1; rank >= 0; rank--) {
    const i = order[rank]!;
    smallest = Math.min(smallest, factor(rank) * p[i]!);
    adjusted[i] = smallest;
  }
  return adjusted;
}
