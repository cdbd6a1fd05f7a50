import type { Life } from '../turnbull/kaplan-meier.ts';

/** A failure with the rank it has on average, the suspensions before it allowed for. */
export interface RankedFailure {
  readonly time: number;
  readonly rank: number;
}

/**
 * Adjusted ranks of failures among suspensions (Johnson 1964): each failure adds (n + 1 − previous rank)/(1 + units not yet past).
 * A suspension at the time of a failure counts as later.
 */
export function adjustedRanks(lives: readonly Life[]): RankedFailure[] {
  const sorted = [...lives].sort((a, b) => a.time - b.time || Number(b.failed) - Number(a.failed));
  const n = sorted.length;
  let rank = 0;
  return sorted.flatMap(({ time, failed }, i) => {
    if (!failed) return [];
    rank += (n + 1 - rank) / (1 + n - i);
    return [{ time, rank }];
  });
}
