import { exchanged, type Tails, tailsOfLogLower } from '../special/tails.ts';
import { logMeanOverSpread } from './estimated-spread.ts';
import { normal } from './normal.ts';
import { type ProbabilityLaw, solveTails, tailFunctions } from './probability-law.ts';

/**
 * Student's t with a shift: (Z + shift)/S, S the sample standard deviation of so many degrees of freedom.
 *
 * P(T ≤ t) = E[Φ(t·S − shift)]. One-sided tolerance factors are its quantiles: k = t_{n−1; confidence}(z_p √n)/√n
 * (Owen 1963; ISO 16269-6).
 */
export function noncentralStudentLaw(degrees: number, shift: number): ProbabilityLaw {
  const slope = Math.abs(shift) + 9;
  const tails = (t: number): Tails => {
    const logLower = logMeanOverSpread(degrees, (s) => normal.logCdf(t * s - shift), slope);
    if (logLower < -Math.LN2) return tailsOfLogLower(logLower);
    return exchanged(tailsOfLogLower(logMeanOverSpread(degrees, (s) => normal.logSf(t * s - shift), slope)));
  };
  return {
    ...tailFunctions(tails),
    quantile: (p) => solveTails(tails, (t) => t, shift, p, 1 - p),
    quantileOfSf: (q) => solveTails(tails, (t) => t, shift, 1 - q, q),
  };
}
