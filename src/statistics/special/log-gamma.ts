import { LOG_ROOT_TWO_PI } from './constants.ts';
import { stirlingError } from './stirling.ts';

/**
 * log Γ(x) for x > 0; NaN below.
 *
 * From 10 upward Stirling's formula with its error term; below, recurrence to [1.5, 2.5] and there the series of
 * log Γ(2 + e) = (1 − γ)e + Σ (−1)ᵏ (ζ(k) − 1) eᵏ/k (Abramowitz & Stegun 6.1.33), which keeps the digits where
 * log Γ crosses zero at 1 and 2.
 */
export function logGamma(x: number): number {
  if (!(x > 0)) return x === 0 ? Infinity : Number.NaN;
  if (x >= 10) return x === Infinity ? x : (x - 0.5) * Math.log(x) - x + LOG_ROOT_TWO_PI + stirlingError(x);
  if (x < 0.5) return logGammaNearTwo(x) - Math.log1p(x) - Math.log(x);
  if (x < 1.5) return logGammaNearTwo(x - 1) - Math.log1p(x - 1);
  let product = 1;
  let y = x;
  while (y > 2.5) {
    y -= 1;
    product *= y;
  }
  return logGammaNearTwo(y - 2) + Math.log(product);
}

/** log Γ(1 + x) for x > −1, relative to x where x is small. */
export function logGammaOnePlus(x: number): number {
  return Math.abs(x) <= 0.5 ? logGammaNearTwo(x) - Math.log1p(x) : logGamma(1 + x);
}

/** log Γ(2 + e) for |e| ≤ ½ */
function logGammaNearTwo(e: number): number {
  let sum = 0;
  for (let k = ZETA_LESS_ONE_OVER_K.length - 1; k >= 0; k--) sum = sum * -e + ZETA_LESS_ONE_OVER_K[k]!;
  return e * (ONE_LESS_EULER + e * sum);
}

/** 1 − γ */
const ONE_LESS_EULER = 0.42278433509846713;
/** (ζ(k) − 1)/k for k = 2 … 28 */
const ZETA_LESS_ONE_OVER_K = [
  0.3224670334241132, 0.0673523010531981, 0.020580808427784546, 0.007385551028673986, 0.0028905103307415234,
  0.001192753911703261, 0.0005096695247430425, 0.00022315475845357939, 9.945751278180853e-5,
  4.492623673813314e-5, 2.050721277567069e-5, 9.439488275268397e-6, 4.374866789907488e-6,
  2.039215753801366e-6, 9.55141213040742e-7, 4.492469198764566e-7, 2.1207184805554665e-7,
  1.0043224823968099e-7, 4.7698101693639804e-8, 2.2711094608943164e-8, 1.0838659214896955e-8,
  5.183475041970047e-9, 2.4836745438024785e-9, 1.1921401405860912e-9, 5.731367241678862e-10,
  2.7595228851242334e-10, 1.330476437424449e-10,
];
