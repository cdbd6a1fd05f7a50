import { logDifference } from '../special/log-arithmetic.ts';
import type { StandardLaw } from './standard-law.ts';

/** log(F(b) − F(a)) with its derivatives to the lower end a and the upper end b. */
export interface IntervalTerm {
  value: number;
  lowerSlope: number;
  upperSlope: number;
  lowerCurvature: number;
  upperCurvature: number;
  cross: number;
}

/**
 * log(F(upper) − F(lower)) for lower ≤ upper, either end infinite; −∞ for an empty interval, NaN if reversed.
 *
 * Taken in the tail where it does not cancel: below the median from log F, above from log S, across it from
 * 1 − F − S. Where the interval is so narrow that any of these cancels, the density is integrated over it by five
 * Gauss–Legendre points, relative to its value in the middle.
 */
export function logIntervalProbability(law: StandardLaw, lower: number, upper: number): number {
  if (lower === -Infinity) return law.logCdf(upper);
  if (upper === Infinity) return law.logSf(lower);
  if (!(lower < upper)) return lower === upper ? -Infinity : Number.NaN;
  const middle = 0.5 * (lower + upper);
  const half = 0.5 * (upper - lower);
  if (half * (1 + Math.abs(law.dLogPdf(middle))) < NARROW) return logNarrow(law, middle, half);
  const below = law.cdf(upper);
  if (below <= 0.5) return logDifference(law.logCdf(upper), law.logCdf(lower));
  const above = law.sf(lower);
  if (above <= 0.5) return logDifference(law.logSf(lower), law.logSf(upper));
  return Math.log1p(-(law.cdf(lower) + law.sf(upper)));
}

/**
 * The same with first and second derivatives, written into `into`: with D = F(b) − F(a), ∂a = −f(a)/D, ∂b = f(b)/D,
 * ∂aa = −f′(a)/D − ∂a², ∂bb = f′(b)/D − ∂b², ∂ab = −∂a·∂b. An infinite end has derivatives 0.
 */
export function intervalTerm(
  law: StandardLaw,
  lower: number,
  upper: number,
  into: IntervalTerm,
): IntervalTerm {
  const value = logIntervalProbability(law, lower, upper);
  into.value = value;
  into.lowerSlope = lower === -Infinity ? 0 : -Math.exp(law.logPdf(lower) - value);
  into.upperSlope = upper === Infinity ? 0 : Math.exp(law.logPdf(upper) - value);
  into.lowerCurvature = lower === -Infinity ? 0 : into.lowerSlope * (law.dLogPdf(lower) - into.lowerSlope);
  into.upperCurvature = upper === Infinity ? 0 : into.upperSlope * (law.dLogPdf(upper) - into.upperSlope);
  into.cross = -into.lowerSlope * into.upperSlope;
  return into;
}

/** Half width, in units in which log f changes by one, under which five points integrate f to 1e-15. */
const NARROW = 0.1;

const NODE_1 = 0.5384693101056831;
const NODE_2 = 0.906179845938664;
const WEIGHT_0 = 128 / 225;
const WEIGHT_1 = 0.47862867049936647;
const WEIGHT_2 = 0.23692688505618908;

function logNarrow(law: StandardLaw, middle: number, half: number): number {
  const log = law.logPdf(middle);
  const at = (node: number) => Math.exp(law.logPdf(middle + half * node) - log);
  const sum = WEIGHT_0 + WEIGHT_1 * (at(NODE_1) + at(-NODE_1)) + WEIGHT_2 * (at(NODE_2) + at(-NODE_2));
  return log + Math.log(half * sum);
}
