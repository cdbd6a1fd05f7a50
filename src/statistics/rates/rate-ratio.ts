import { binomialLaw } from '../laws/counts.ts';
import { normal } from '../laws/normal.ts';
import { logGamma } from '../special/log-gamma.ts';
import { type Count, checkExposure } from './poisson-rate.ts';
import { shareLimits } from './proportion.ts';

/** Two rates against each other. */
export interface RateRatio {
  /** First over second; null where the second has no events. */
  readonly ratio: number | null;
  readonly lower: number;
  /** Null where unbounded. */
  readonly upper: number | null;
  /** Probability, were the rates equal, of a split as or less likely than this one. */
  readonly p: number;
  /** Probability of so many or more events in the first: for "is it higher?". */
  readonly pHigher: number;
  readonly pLower: number;
}

/**
 * The exact comparison of two Poisson rates: given the total, the events of the first are binomial with share
 * r·t₁/(r·t₁ + t₂). The two-sided p adds up the splits as or less likely than the one seen (as R's poisson.test), which is not
 * twice the tail.
 *
 * @throws RangeError without any event, or for an exposure that is not above 0
 */
export function rateRatio(first: Count, second: Count, level: number): RateRatio {
  checkExposure(first.exposure);
  checkExposure(second.exposure);
  const total = first.events + second.events;
  if (!(total > 0)) throw new RangeError('neither side has an event; the rates cannot be compared');
  const share = shareLimits(first.events, total, level);
  const toRatio = (p: number) => (p / (1 - p)) * (second.exposure / first.exposure);
  const equal = first.exposure / (first.exposure + second.exposure);
  const law = binomialLaw(total, equal);
  return {
    ratio: second.events === 0 ? null : first.events / first.exposure / (second.events / second.exposure),
    lower: toRatio(share.lower),
    upper: share.upper === 1 ? null : toRatio(share.upper),
    p: asOrLessLikely(first.events, total, equal),
    pHigher: law.sf(first.events - 1),
    pLower: law.cdf(first.events),
  };
}

/** Σ of the binomial probabilities that are no larger than that of `count`, with a hair of tolerance for rounding. */
export function asOrLessLikely(count: number, trials: number, probability: number): number {
  const logOf = (k: number) =>
    logGamma(trials + 1) -
    logGamma(k + 1) -
    logGamma(trials - k + 1) +
    (k === 0 ? 0 : k * Math.log(probability)) +
    (k === trials ? 0 : (trials - k) * Math.log1p(-probability));
  const bound = logOf(count) + 1e-7;
  let sum = 0;
  for (let k = 0; k <= trials; k++) {
    const log = logOf(k);
    if (log <= bound) sum += Math.exp(log);
  }
  return Math.min(1, sum);
}

/** The score test of equal rates (Gu, Ng, Tang & Schucany 2008, Biometrical J. 50, 283–298): good from some ten events a side. */
export function rateScoreTest(first: Count, second: Count): { readonly z: number; readonly pHigher: number } {
  checkExposure(first.exposure);
  checkExposure(second.exposure);
  const d = first.exposure / second.exposure;
  const z = (first.events - second.events * d) / Math.sqrt((first.events + second.events) * d);
  return { z, pHigher: normal.sf(z) };
}
