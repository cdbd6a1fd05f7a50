import { logOneMinusExp } from '../special/log-arithmetic.ts';
import type { StandardLaw } from './standard-law.ts';

function cdf(z: number): number {
  return 1 / (1 + Math.exp(-z));
}

function logCdf(z: number): number {
  return z < 0 ? z - Math.log1p(Math.exp(z)) : -Math.log1p(Math.exp(-z));
}

/** f = F·S, written by e^−|z| so that it neither overflows nor cancels. */
function pdf(z: number): number {
  const e = Math.exp(-Math.abs(z));
  return e / ((1 + e) * (1 + e));
}

function quantile(p: number): number {
  // Between a quarter and three quarters 2p − 1 is exact, which keeps the digits where the logit crosses zero.
  if (p > 0.25 && p < 0.75) return Math.log1p((2 * p - 1) / (1 - p));
  return Math.log(p / (1 - p));
}

function quantileOfLogCdf(logP: number): number {
  return logP - logOneMinusExp(logP);
}

/** The standard logistic law, F = 1/(1 + e^−z), variance π²/3. (log F)′ = S and (log S)′ = −F, (log F)″ = (log S)″ = −f. */
export const logistic: StandardLaw = {
  name: 'logistic',
  pdf,
  logPdf: (z) => -Math.abs(z) - 2 * Math.log1p(Math.exp(-Math.abs(z))),
  dLogPdf: (z) => -Math.tanh(0.5 * z),
  d2LogPdf: (z) => -2 * pdf(z),
  cdf,
  sf: (z) => cdf(-z),
  logCdf,
  logSf: (z) => logCdf(-z),
  dLogCdf: (z) => cdf(-z),
  dLogSf: (z) => -cdf(z),
  d2LogCdf: (z) => -pdf(z),
  d2LogSf: (z) => -pdf(z),
  logCdfTerm(z, into) {
    const e = Math.exp(-Math.abs(z));
    const far = 1 / (1 + e);
    const near = e * far;
    into.value = Math.min(z, 0) - Math.log1p(e);
    into.slope = z < 0 ? far : near;
    into.curvature = -near * far;
    return into;
  },
  logSfTerm(z, into) {
    const e = Math.exp(-Math.abs(z));
    const far = 1 / (1 + e);
    const near = e * far;
    into.value = Math.min(-z, 0) - Math.log1p(e);
    into.slope = z < 0 ? -near : -far;
    into.curvature = -near * far;
    return into;
  },
  quantile,
  quantileOfSf: (q) => -quantile(q),
  quantileOfLogCdf,
  quantileOfLogSf: (logQ) => -quantileOfLogCdf(logQ),
};
