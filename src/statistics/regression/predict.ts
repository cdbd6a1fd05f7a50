import { fromScale } from '../likelihood/observation.ts';
import type { Setting } from './design.ts';
import type { RegressionFit } from './fit.ts';

/** A quantile with its standard error, on the fitted scale and taken back to x. */
export interface Prediction {
  /** On the fitted scale (x or ln x). */
  readonly fitted: number;
  readonly standardErrorOfFitted: number;
  /** On the scale of x; its standard error by the delta method. */
  readonly value: number;
  readonly standardError: number;
}

/**
 * The level at which the share `probability` fails under a setting of the covariates, such as the pressure of the
 * protocol: location + scale·z, with the standard error from the observed information.
 *
 * @param group the level of the factor that scales go by, where they do
 * @throws RangeError for a setting or group that the fit does not know
 */
export function predictQuantile(
  fit: RegressionFit,
  probability: number,
  setting: Setting,
  group: string | null = null,
): Prediction {
  const g = fit.scales.findIndex((s) => s.group === group);
  if (g === -1) throw new RangeError(`no scale of group ${group}`);
  const row = fit.design.rowAt(setting);
  const z = fit.law.standard.quantile(probability);
  const scale = fit.scales[g]!.value;
  const size = fit.effects.length + fit.scales.length;
  const gradient = new Float64Array(size);
  gradient.set(row);
  gradient[fit.effects.length + g] = scale * z;
  let fitted = scale * z;
  for (const [j, effect] of fit.effects.entries()) fitted += row[j]! * effect.value;
  let variance = 0;
  for (let i = 0; i < size; i++)
    for (let k = 0; k < size; k++) variance += gradient[i]! * gradient[k]! * fit.covariance[i * size + k]!;
  const standardErrorOfFitted = Math.sqrt(variance);
  const value = fromScale(fitted, fit.law.scale);
  const slope = fit.law.scale === 'log' ? value : 1;
  return { fitted, standardErrorOfFitted, value, standardError: slope * standardErrorOfFitted };
}
