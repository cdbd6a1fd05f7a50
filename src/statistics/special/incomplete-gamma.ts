import { LOG_ROOT_TWO_PI } from './constants.ts';
import { continuedFraction } from './continued-fraction.ts';
import { logGammaOnePlus } from './log-gamma.ts';
import { deviance, stirlingError } from './stirling.ts';
import { type Tails, tailsOfLogLower, tailsOfLogUpper } from './tails.ts';

/**
 * The regularised incomplete gamma functions P(a, x) and Q(a, x): the tails at x ≥ 0 of the gamma law of shape a > 0.
 *
 * Power series below a + 1 (DLMF 8.11.4), Legendre's continued fraction above (DLMF 8.9.2); for a < 1 and small x, Q
 * from the series in −x (DLMF 8.7.3), since there P is close to 1. The factor xᵃe⁻ˣ/Γ(a) in saddle-point form
 * (Loader 2000). Terms needed grow as √a.
 *
 * @returns NaN tails for a ≤ 0 or x < 0
 */
export function incompleteGamma(a: number, x: number): Tails {
  if (!(a > 0 && x >= 0) || a === Infinity) return tailsOfLogLower(Number.NaN);
  if (x === 0) return tailsOfLogLower(-Infinity);
  if (x === Infinity) return tailsOfLogUpper(-Infinity);
  if (a < 1 && x < 1.1) return smallShape(a, x);
  const logFactor = logGammaFactor(a, x);
  if (x < a + 1) return tailsOfLogLower(logFactor + Math.log(powerSeries(a, x) / a));
  const fraction = continuedFraction(
    (k) => k * (a - k),
    (k) => x + 2 * k + 1 - a,
  );
  return tailsOfLogUpper(logFactor - Math.log(fraction));
}

/** log(xᵃ e⁻ˣ/Γ(a)) = log of the gamma density times x, for a, x > 0. */
export function logGammaFactor(a: number, x: number): number {
  if (a < 1) return a * Math.log(x) - x + Math.log(a) - logGammaOnePlus(a);
  return 0.5 * Math.log(a) - LOG_ROOT_TWO_PI - stirlingError(a) - deviance(a, x);
}

/** Σ xⁿ/((a + 1) … (a + n)) from n = 0 */
function powerSeries(a: number, x: number): number {
  let term = 1;
  let sum = 1;
  for (let n = a + 1; term > sum * 1e-17; n++) {
    term *= x / n;
    sum += term;
  }
  return sum;
}

/**
 * P = xᵃ/Γ(1 + a)·(1 + s), s = a Σ (−x)ⁿ/((a + n) n!) from n = 1, so Q = −expm1(u) − eᵘ·s with u = a log x − log Γ(1 + a).
 */
function smallShape(a: number, x: number): Tails {
  let power = 1;
  let sum = 0;
  for (let n = 1; n < 40; n++) {
    power *= -x / n;
    sum += power / (a + n);
  }
  const u = a * Math.log(x) - logGammaOnePlus(a);
  const lower = tailsOfLogLower(u + Math.log1p(a * sum));
  const upper = -Math.expm1(u) - Math.exp(u) * a * sum;
  return lower.lower < 0.5 ? lower : { ...lower, upper, logUpper: Math.log(upper) };
}
