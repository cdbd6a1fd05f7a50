import { exchanged, type Tails, tailsOfLogLower } from '../special/tails.ts';
import { logMeanOverSpread } from './estimated-spread.ts';
import { logIntervalProbability } from './interval.ts';
import { normal } from './normal.ts';
import { type ProbabilityLaw, positiveLaw } from './probability-law.ts';

/**
 * The studentized range: the range of so many standard normal numbers over an independent sample standard deviation.
 * Its quantiles are the factors of Tukey's comparison of all pairs.
 *
 * @param groups how many numbers, 2 or more
 * @param degrees degrees of freedom of the standard deviation
 */
export function studentizedRangeLaw(groups: number, degrees: number): ProbabilityLaw {
  const tails = (q: number): Tails => {
    if (q === 0) return tailsOfLogLower(-Infinity);
    if (q === Infinity) return exchanged(tailsOfLogLower(-Infinity));
    const logLower = logMeanOverSpread(degrees, (s) => Math.log(rangeWithin(groups, q * s)), SLOPE);
    if (logLower < -Math.LN2) return tailsOfLogLower(logLower);
    return exchanged(
      tailsOfLogLower(logMeanOverSpread(degrees, (s) => Math.log(rangeBeyond(groups, q * s)), SLOPE)),
    );
  };
  return positiveLaw(tails, 3);
}

/** A range counts as sure beyond about this many standard deviations. */
const SLOPE = 12;
/** Step of the trapezoidal rule over the largest number; the integrands are entire and fall like exp(−z²/2). */
const STEP = 0.25;
const END = 9;

/** P(range ≤ w) = k ∫ φ(z) [Φ(z) − Φ(z − w)]ᵏ⁻¹ dz, z the largest number. */
function rangeWithin(groups: number, w: number): number {
  let sum = 0;
  for (let z = -END; z <= END; z += STEP) {
    const inside = Math.exp(logIntervalProbability(normal, z - w, z));
    sum += normal.pdf(z) * inside ** (groups - 1);
  }
  return groups * STEP * sum;
}

/** P(range > w) = k ∫ φ(z) {Φ(z)ᵏ⁻¹ − [Φ(z) − Φ(z − w)]ᵏ⁻¹} dz, the braces without cancellation. */
export function rangeBeyond(groups: number, w: number): number {
  let sum = 0;
  for (let z = -END; z <= END + w; z += STEP) {
    const cdf = normal.cdf(z);
    const share = -Math.expm1((groups - 1) * Math.log1p(-normal.cdf(z - w) / cdf));
    sum += normal.pdf(z) * cdf ** (groups - 1) * share;
  }
  return groups * STEP * sum;
}
