import { binomialLaw } from '../laws/counts.ts';
import { shareLimits } from '../rates/proportion.ts';

/** A share of rounding below which a whole number counts as reached. */
const HAIR = 1e-9;

/**
 * How many must survive, without a failure, to show a reliability with a confidence: n = ln(1 − C)/ln R, rounded up: 22 for 90/90
 * (not the Bayesian n − 1).
 *
 * @throws RangeError for reliability or confidence outside (0, 1)
 */
export function successRunSize(reliability: number, confidence: number): number {
  checkShares(reliability, confidence);
  return Math.ceil(Math.log1p(-confidence) / Math.log(reliability) - HAIR);
}

/** The smallest number on test with so many failures allowed: P(X ≤ failures) ≤ 1 − C at failure probability 1 − R. */
export function demonstrationSize(reliability: number, confidence: number, failures: number): number {
  checkShares(reliability, confidence);
  if (!(Number.isInteger(failures) && failures >= 0))
    throw new RangeError(`${failures} is no number of failures`);
  const shows = (n: number) => binomialLaw(n, 1 - reliability).cdf(failures) <= (1 - confidence) * (1 + HAIR);
  let low = failures;
  let high = failures + 1;
  while (!shows(high)) {
    low = high;
    high *= 2;
  }
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (shows(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** The reliability shown with a confidence by so many failures of n (the lower Clopper–Pearson limit, one-sided). */
export function reliabilityShown(failures: number, n: number, confidence: number): number {
  return 1 - shareLimits(failures, n, confidence, 1).upper;
}

/** The confidence with which so many failures of n show a reliability: 1 − P(X ≤ failures). */
export function confidenceShown(failures: number, n: number, reliability: number): number {
  if (failures >= n) return 0;
  return binomialLaw(n, 1 - reliability).sf(failures);
}

function checkShares(reliability: number, confidence: number): void {
  for (const [name, value] of [
    ['reliability', reliability],
    ['confidence', confidence],
  ] as const)
    if (!(value > 0 && value < 1)) throw new RangeError(`${name} ${value} is not between 0 and 1`);
}
