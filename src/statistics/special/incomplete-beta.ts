import { LOG_ROOT_TWO_PI } from './constants.ts';
import { continuedFraction } from './continued-fraction.ts';
import { deviance, stirlingError } from './stirling.ts';
import { exchanged, type Tails, tailsOfLogLower, tailsOfLogUpper } from './tails.ts';

/**
 * The regularised incomplete beta functions I_x(a, b) and I_{1−x}(b, a): the tails at x of the beta law, a, b > 0.
 *
 * Continued fraction (DLMF 8.17.22) in the tail where it converges fast; the factor xᵃ(1 − x)ᵇ/B(a, b) in saddle-point
 * form (Loader 2000). Terms needed grow as √max(a, b).
 *
 * @param y 1 − x, to be given where it is known better than by subtraction
 * @returns NaN tails for parameters at or below 0 or x outside [0, 1]
 */
export function incompleteBeta(a: number, b: number, x: number, y: number = 1 - x): Tails {
  if (!(a > 0 && b > 0 && x >= 0 && y >= 0)) return tailsOfLogLower(Number.NaN);
  if (x === 0) return tailsOfLogLower(-Infinity);
  if (y === 0) return tailsOfLogUpper(-Infinity);
  if (x * (b + 1) > y * (a + 1)) return exchanged(tailsBelowMean(b, a, y, x));
  return tailsBelowMean(a, b, x, y);
}

/** log(xᵃ yᵇ/B(a, b)), y = 1 − x, for a, b > 0 and 0 < x < 1. */
export function logBetaFactor(a: number, b: number, x: number, y: number): number {
  const n = a + b;
  const errors = stirlingError(n) - stirlingError(a) - stirlingError(b);
  return 0.5 * Math.log(a * (b / n)) - LOG_ROOT_TWO_PI + errors - deviance(a, n * x) - deviance(b, n * y);
}

function tailsBelowMean(a: number, b: number, x: number, y: number): Tails {
  const fraction = continuedFraction(
    (k) => {
      const m = k >> 1;
      if (k & 1) return (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
      return (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    },
    () => 1,
  );
  return tailsOfLogLower(logBetaFactor(a, b, x, y) - Math.log(a * fraction));
}
