import type { Law } from '../laws/laws.ts';
import type { Covariance } from './fit.ts';
import { fromScale } from './observation.ts';
import { varianceAt } from './quantile.ts';
import type { Limits } from './wald.ts';

/**
 * Fieller's interval of the quantile at share failed p, on the original scale (Fieller 1954, JRSS B 16, 175–185; Finney,
 * Probit Analysis, chapter 3): all t for which η + b·t = F⁻¹(p) is not rejected, where b = 1/scale and η = −location/scale.
 *
 * With δ = t − quantile, V the variance of the quantile, and K = (cov + z·var(scale))/scale it solves
 * (1 − g)δ² − 2c²Kδ − c²V ≤ 0 with g = c²·var(scale)/scale². Only g < 1 gives two ends: at or above, the slope itself
 * is not significant, the set is a line or two rays, and both ends are null.
 *
 * @param fit location and scale with a covariance: the observed one of a Fit, or the expected one, which printed probit
 *   analyses use
 * @param critical normalCritical(level, sides)
 */
export function fiellerQuantile(
  fit: { readonly location: number; readonly scale: number; readonly covariance: Covariance },
  law: Law,
  p: number,
  critical: number,
): Limits & { readonly g: number } {
  const { location, scale, covariance } = fit;
  const z = law.standard.quantile(p);
  const square = critical * critical;
  const g = (square * covariance.scale) / (scale * scale);
  if (!(g < 1)) return { lower: null, upper: null, g };
  const centre = (square * (covariance.cross + z * covariance.scale)) / scale;
  const half = Math.sqrt(centre * centre + (1 - g) * square * varianceAt(covariance, z));
  const quantile = location + z * scale;
  return {
    lower: fromScale(quantile + (centre - half) / (1 - g), law.scale),
    upper: fromScale(quantile + (centre + half) / (1 - g), law.scale),
    g,
  };
}
