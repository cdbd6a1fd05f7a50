import { logOneMinusExp } from '../special/log-arithmetic.ts';
import type { LogTerm, StandardLaw } from './standard-law.ts';

/** Below this z, w = eᶻ is so small that log(1 − e⁻ʷ) = z − w/2 to the last digit. */
const FAR_LEFT = -30;

/** log F at z, with w = eᶻ */
function logCdfAt(z: number, w: number): number {
  return z < FAR_LEFT ? z - 0.5 * w : logOneMinusExp(-w);
}

/** (log F)′ = w/(eʷ − 1) at z, with w = eᶻ */
function slopeAt(z: number, w: number): number {
  if (w < 1e-17) return 1;
  if (w < 40) return w / Math.expm1(w);
  // Here eʷ − 1 = eʷ to the last digit, and eʷ alone would overflow first.
  return w === Infinity ? 0 : Math.exp(z - w);
}

/**
 * (log F)″ = g·(1 − w − g) with g = (log F)′. For small w the bracket cancels and is taken from the series of
 * w/(eʷ − 1), whose coefficients are Bernoulli numbers over factorials; at w = ½ the last term kept is 1e-16 of the sum.
 */
function curvatureAt(w: number, slope: number): number {
  if (slope === 0) return 0;
  if (w > 0.5) return slope * (1 - w - slope);
  const v = w * w;
  const series =
    1 / 12 -
    v * (1 / 720 - v * (1 / 30240 - v * (1 / 1209600 - v * (1 / 47900160 - v * (691 / 1307674368000)))));
  return -slope * w * (0.5 + w * series);
}

/** z − eᶻ, where ∞ − ∞ would be no number */
function logPdf(z: number): number {
  return z === Infinity ? -Infinity : z - Math.exp(z);
}

function cdf(z: number): number {
  return -Math.expm1(-Math.exp(z));
}

function logCdf(z: number): number {
  return logCdfAt(z, Math.exp(z));
}

function dLogCdf(z: number): number {
  return slopeAt(z, Math.exp(z));
}

function d2LogCdf(z: number): number {
  const w = Math.exp(z);
  return curvatureAt(w, slopeAt(z, w));
}

function logCdfTerm(z: number, into: LogTerm): LogTerm {
  const w = Math.exp(z);
  into.value = logCdfAt(z, w);
  into.slope = slopeAt(z, w);
  into.curvature = curvatureAt(w, into.slope);
  return into;
}

function logSfTerm(z: number, into: LogTerm): LogTerm {
  const w = Math.exp(z);
  into.value = -w;
  into.slope = -w;
  into.curvature = -w;
  return into;
}

/**
 * The standard law of smallest extremes, S = exp(−eᶻ): the logarithm of a Weibull life over its characteristic life,
 * times the shape. F(0) = 0.632; every derivative of log S is −eᶻ.
 */
export const smallestExtremeValue: StandardLaw = {
  name: 'smallest-extreme-value',
  pdf: (z) => Math.exp(logPdf(z)),
  logPdf,
  dLogPdf: (z) => -Math.expm1(z),
  d2LogPdf: (z) => -Math.exp(z),
  cdf,
  sf: (z) => Math.exp(-Math.exp(z)),
  logCdf,
  logSf: (z) => -Math.exp(z),
  dLogCdf,
  dLogSf: (z) => -Math.exp(z),
  d2LogCdf,
  d2LogSf: (z) => -Math.exp(z),
  logCdfTerm,
  logSfTerm,
  quantile: (p) => Math.log(-Math.log1p(-p)),
  quantileOfSf: (q) => Math.log(-Math.log(q)),
  quantileOfLogCdf: (logP) =>
    logP < FAR_LEFT ? logP + 0.5 * Math.exp(logP) : Math.log(-logOneMinusExp(logP)),
  quantileOfLogSf: (logQ) => Math.log(-logQ),
};
