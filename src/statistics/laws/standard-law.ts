/** A logarithm of a probability at z, with its first and second derivative to z. */
export interface LogTerm {
  value: number;
  slope: number;
  curvature: number;
}

/**
 * A law with location 0 and scale 1: what a censored likelihood and its intervals need of it.
 *
 * Both tails and the logarithm of each have their own function, since 1 − cdf and log(1 − cdf) lose a tail.
 * Every function takes −∞ and ∞ and gives the limit, where there is one. A probability outside [0, 1] gives NaN.
 */
export interface StandardLaw {
  readonly name: 'normal' | 'logistic' | 'smallest-extreme-value';

  pdf(z: number): number;
  logPdf(z: number): number;
  /** (log f)′ */
  dLogPdf(z: number): number;
  /** (log f)″ */
  d2LogPdf(z: number): number;

  /** F(z) = P(Z ≤ z) */
  cdf(z: number): number;
  /** S(z) = P(Z > z) */
  sf(z: number): number;
  logCdf(z: number): number;
  logSf(z: number): number;
  /** (log F)′ = f/F */
  dLogCdf(z: number): number;
  /** (log S)′ = −f/S */
  dLogSf(z: number): number;
  /** (log F)″, at or below 0: all three laws are log-concave */
  d2LogCdf(z: number): number;
  /** (log S)″, at or below 0 */
  d2LogSf(z: number): number;

  /** log F, (log F)′ and (log F)″ at once, written into `into`: the hot path of a fit, no allocation. */
  logCdfTerm(z: number, into: LogTerm): LogTerm;
  /** log S, (log S)′ and (log S)″ at once, written into `into`. */
  logSfTerm(z: number, into: LogTerm): LogTerm;

  /** z with F(z) = p */
  quantile(p: number): number;
  /** z with S(z) = q: the upper tail keeps its digits */
  quantileOfSf(q: number): number;
  /** z with log F(z) = logP: reaches tails that no double holds */
  quantileOfLogCdf(logP: number): number;
  /** z with log S(z) = logQ */
  quantileOfLogSf(logQ: number): number;
}
