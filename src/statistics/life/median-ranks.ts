import { betaLaw } from '../laws/beta.ts';

/**
 * The median of the i-th smallest of n uniform numbers, the quantile ½ of the beta law of i and n − i + 1: where the i-th failure
 * is drawn on probability paper. i need not be whole (adjusted ranks).
 */
export function medianRank(i: number, n: number): number {
  if (!(i > 0 && i <= n)) throw new RangeError(`rank ${i} of ${n}`);
  return betaLaw(i, n - i + 1).quantile(0.5);
}

/** Benard's approximation (i − 0.3)/(n + 0.4) of the median rank (Benard & Bos-Levenbach 1953). */
export function benardRank(i: number, n: number): number {
  return (i - 0.3) / (n + 0.4);
}
