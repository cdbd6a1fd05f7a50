import { fisherLaw } from '../laws/fisher.ts';

/** What Cochran's test says of the largest of several variances. */
export interface CochranTest {
  /** Place of the largest, from 0. */
  readonly index: number;
  /** The largest as a share of their sum. */
  readonly statistic: number;
  readonly critical: number;
  readonly outlier: boolean;
}

/**
 * The critical value of Cochran's C for p variances of n values each: 1/(1 + (p − 1)/F), F at significance/p above with n − 1
 * and (p − 1)(n − 1) degrees of freedom. Exact for values above ½, an upper bound that agrees to three decimals below.
 */
export function cochranCritical(variances: number, n: number, significance: number): number {
  if (!(variances >= 2 && n >= 2))
    throw new RangeError("Cochran's test needs two variances of two values or more");
  const f = fisherLaw(n - 1, (variances - 1) * (n - 1)).quantileOfSf(significance / variances);
  return 1 / (1 + (variances - 1) / f);
}

/**
 * Cochran's test for one variance that is larger than the others (ISO 5725-2, 7.3.3).
 *
 * @param n values behind each variance; where they differ a little, the number that most of them have
 */
export function cochranTest(variances: readonly number[], n: number, significance: number): CochranTest {
  const critical = cochranCritical(variances.length, n, significance);
  const largest = Math.max(...variances);
  const sum = variances.reduce((a, b) => a + b);
  if (!(sum > 0)) throw new RangeError('no variance is above 0');
  const statistic = largest / sum;
  return { index: variances.indexOf(largest), statistic, critical, outlier: statistic > critical };
}
