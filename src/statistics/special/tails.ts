/** The two tails of a law at a point, and the logarithm of each: the smaller one is never 1 less the larger. */
export interface Tails {
  readonly lower: number;
  readonly upper: number;
  readonly logLower: number;
  readonly logUpper: number;
}

/** Both tails from the logarithm of the lower one, which should not be close to 1. */
export function tailsOfLogLower(logLower: number): Tails {
  // Rounding may carry a probability a hair over 1.
  const log = Math.min(0, logLower);
  const lower = Math.exp(log);
  return { lower, upper: 1 - lower, logLower: log, logUpper: Math.log1p(-lower) };
}

/** The same with the tails exchanged: the tails of −X. */
export function exchanged({ lower, upper, logLower, logUpper }: Tails): Tails {
  return { lower: upper, upper: lower, logLower: logUpper, logUpper: logLower };
}

/** Both tails from the logarithm of the upper one. */
export function tailsOfLogUpper(logUpper: number): Tails {
  return exchanged(tailsOfLogLower(logUpper));
}
