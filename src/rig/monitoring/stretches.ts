/** Points from first to last, ends included, between which nothing was settled. */
export interface Stretch {
  readonly first: number;
  readonly last: number;
  /** What was settled at its end; null for the last one, which is still open. */
  readonly settled: string | null;
}

/**
 * Parts the points behind each that was settled: what was mended there no longer speaks about what comes after, so sums, averages
 * and runs start anew.
 */
export function stretchesOf(settled: readonly (string | null)[]): Stretch[] {
  const stretches: Stretch[] = [];
  let first = 0;
  for (const [i, cause] of settled.entries()) {
    if (cause === null) continue;
    stretches.push({ first, last: i, settled: cause });
    first = i + 1;
  }
  if (first < settled.length) stretches.push({ first, last: settled.length - 1, settled: null });
  return stretches;
}
