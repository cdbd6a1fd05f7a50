/** A batch of numbers in brief. */
export interface Summary {
  readonly n: number;
  readonly mean: number;
  /** Standard deviation with n − 1; null for a single value. */
  readonly standardDeviation: number | null;
  readonly minimum: number;
  readonly maximum: number;
}

/**
 * The sum with what each addition lost carried along (Neumaier 1974): right to the last digit or so, in any order.
 */
export function compensatedSum(values: Iterable<number>): number {
  let sum = 0;
  let lost = 0;
  for (const value of values) {
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
  }
  return sum + lost;
}

/** The mean; the values are taken from the first one, so that what is common to all of them costs no digits. */
export function mean(values: readonly number[]): number {
  if (values.length === 0) throw new RangeError('the mean of no values');
  const origin = values[0]!;
  const shifted = compensatedSum(values.map((value) => value - origin)) / values.length;
  return origin + shifted;
}

/**
 * Σ (x − mean)², in two passes with the correction (Σ(x − mean))²/n for the rounding of the mean (Chan, Golub & LeVeque
 * 1983, "Algorithms for computing the sample variance", equation 1.7). The one-pass Σx² − n·mean² fails on values whose
 * leading digits are alike.
 */
export function sumOfSquares(values: readonly number[]): number {
  const centre = mean(values);
  const deviations = values.map((value) => value - centre);
  const left = compensatedSum(deviations);
  return compensatedSum(deviations.map((d) => d * d)) - (left * left) / values.length;
}

/** The variance with n − 1 degrees of freedom; throws a RangeError for fewer than two values. */
export function variance(values: readonly number[]): number {
  if (values.length < 2) throw new RangeError('a variance needs at least two values');
  return sumOfSquares(values) / (values.length - 1);
}

/** Count, mean, standard deviation and extremes. Throws a RangeError for no values. */
export function summarise(values: readonly number[]): Summary {
  return {
    n: values.length,
    mean: mean(values),
    standardDeviation: values.length < 2 ? null : Math.sqrt(variance(values)),
    minimum: values.reduce((a, b) => Math.min(a, b)),
    maximum: values.reduce((a, b) => Math.max(a, b)),
  };
}
