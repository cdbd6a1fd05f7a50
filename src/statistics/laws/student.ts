import { incompleteBeta } from '../special/incomplete-beta.ts';
import { logGamma } from '../special/log-gamma.ts';
import { exchanged, type Tails, tailsOfLogUpper } from '../special/tails.ts';
import { normal } from './normal.ts';
import { type ProbabilityLaw, solveTails, tailFunctions } from './probability-law.ts';

/** Student's t of so many degrees of freedom; infinitely many give the normal law. */
export function studentLaw(degrees: number): ProbabilityLaw {
  if (degrees === Infinity) return normal;
  /** Tails of |t|, t ≥ 0. */
  const ofSize = (t: number): Tails => {
    if (t === Infinity) return incompleteBeta(0.5, 0.5 * degrees, 1, 0);
    const ratio = t * (t / degrees);
    if (ratio > 1e290) return farTail(degrees, t);
    return incompleteBeta(0.5, 0.5 * degrees, ratio / (1 + ratio), 1 / (1 + ratio));
  };
  const tails = (t: number): Tails => {
    const beyond = ofSize(Math.abs(t));
    const upper = 0.5 * beyond.upper;
    const logUpper = beyond.logUpper - Math.LN2;
    const right = { lower: 1 - upper, upper, logLower: Math.log1p(-upper), logUpper };
    return t < 0 ? exchanged(right) : right;
  };
  const quantile = (p: number): number => {
    if (!(p >= 0 && p <= 1)) return Number.NaN;
    // 1 − 2p is exact where p is near one half, 2p everywhere.
    if (p >= 0.5) return solveTails(ofSize, Math.exp, 0, 2 * p - 1, 2 * (1 - p));
    return -solveTails(ofSize, Math.exp, 0, 1 - 2 * p, 2 * p);
  };
  return { ...tailFunctions(tails), quantile, quantileOfSf: (q) => -quantile(q) };
}

/** Tails of |t| so far out that 1/(1 + t²/ν) leaves the doubles: P(|T| > t) = (ν/t²)^(ν/2)/(ν/2·B(½, ν/2)). */
function farTail(degrees: number, t: number): Tails {
  const half = 0.5 * degrees;
  const logBeta = logGamma(0.5) + logGamma(half) - logGamma(half + 0.5);
  return tailsOfLogUpper(half * (Math.log(degrees) - 2 * Math.log(t)) - Math.log(half) - logBeta);
}
