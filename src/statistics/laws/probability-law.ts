import { bracketRoot, findRoot } from '../root.ts';
import type { Tails } from '../special/tails.ts';

/** A law of a random number with its parameters set: both tails, their logarithms, and the way back. */
export interface ProbabilityLaw {
  /** P(X ≤ x) */
  cdf(x: number): number;
  /** P(X > x) */
  sf(x: number): number;
  logCdf(x: number): number;
  logSf(x: number): number;
  /** x with P(X ≤ x) = p; for a law of counts the smallest count with P(X ≤ x) ≥ p. NaN for p outside [0, 1]. */
  quantile(p: number): number;
  /** x with P(X > x) = q; for a law of counts the smallest count with P(X > x) ≤ q */
  quantileOfSf(q: number): number;
}

/** The four tail functions of a law from its tails at a point. */
export function tailFunctions(
  tails: (x: number) => Tails,
): Omit<ProbabilityLaw, 'quantile' | 'quantileOfSf'> {
  return {
    cdf: (x) => tails(x).lower,
    sf: (x) => tails(x).upper,
    logCdf: (x) => tails(x).logLower,
    logSf: (x) => tails(x).logUpper,
  };
}

/**
 * x = at(u) where the smaller of the two tails, p below and q above, is met on the log scale: Brent's root to the last
 * digit, so that a quantile at 1e-300 is as good as one at 0.1.
 *
 * @param tails tails at x
 * @param at increasing map of the real line to the support, such as exp for a positive law
 * @param start where the search begins, on the scale of u
 * @param p share below; q share above, p + q = 1, the smaller one being exact
 */
export function solveTails(
  tails: (x: number) => Tails,
  at: (u: number) => number,
  start: number,
  p: number,
  q: number,
): number {
  if (!(p >= 0 && q >= 0)) return Number.NaN;
  if (p === 0) return at(-Infinity);
  if (q === 0) return at(Infinity);
  const target = Math.log(Math.min(p, q));
  const excess =
    p <= q ? (u: number) => tails(at(u)).logLower - target : (u: number) => target - tails(at(u)).logUpper;
  const bracket = bracketRoot(excess, start, 0.5);
  return bracket ? at(findRoot(excess, bracket[0], bracket[1])) : Number.NaN;
}

/** A law on x > 0 from its tails; `start` is a point well inside, such as the mean. */
export function positiveLaw(tails: (x: number) => Tails, start: number): ProbabilityLaw {
  const u = Math.log(start);
  const inside = (x: number) => tails(Math.max(0, x));
  return {
    ...tailFunctions(inside),
    quantile: (p) => solveTails(tails, Math.exp, u, p, 1 - p),
    quantileOfSf: (q) => solveTails(tails, Math.exp, u, 1 - q, q),
  };
}
