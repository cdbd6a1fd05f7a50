import { LOG_ROOT_TWO_PI } from '../special/constants.ts';
import { stirlingError } from '../special/stirling.ts';

/**
 * log E[g(S)], where S = χ/√ν is the sample standard deviation, in units of the true one, of ν degrees of freedom.
 *
 * Trapezoidal rule in u = ln s, which converges exponentially for such integrands (Trefethen & Weideman 2014, SIAM
 * Review 56, 385–458). The terms are all positive and are added as logarithms, so small results keep their digits.
 *
 * @param logG log of g ≥ 0 at s; its product with the density of ln S must have one maximum
 * @param slope about the largest derivative to ln s of the argument of a normal tail within g: it sets the step
 */
export function logMeanOverSpread(degrees: number, logG: (s: number) => number, slope: number): number {
  const step = Math.min(0.1, 0.5 / Math.sqrt(2 * degrees + slope * slope));
  const half = 0.5 * degrees;
  const logPeak = Math.LN2 + 0.5 * Math.log(half) - LOG_ROOT_TWO_PI - stirlingError(half);
  const at = (index: number) => {
    const u = index * step;
    return logG(Math.exp(u)) - half * (Math.expm1(2 * u) - 2 * u);
  };
  const top = climb(at);
  const highest = at(top);
  if (highest === -Infinity) return -Infinity;
  let sum = 1;
  for (const direction of [-1, 1]) {
    for (let index = top + direction; ; index += direction) {
      const term = Math.exp(at(index) - highest);
      sum += term;
      if (!(term > 1e-18 * sum)) break;
    }
  }
  return logPeak + highest + Math.log(step * sum);
}

/** The index of the maximum, by steps that double and shrink again. */
function climb(at: (index: number) => number): number {
  let top = 0;
  let value = at(top);
  for (let stride = 1; stride >= 1; ) {
    const right = at(top + stride);
    const left = at(top - stride);
    if (right > value || left > value) {
      top += right > left ? stride : -stride;
      value = Math.max(left, right);
      stride *= 2;
    } else {
      stride = Math.floor(stride / 2);
    }
  }
  return top;
}
