import type { Fit } from '../likelihood/fit.ts';
import type { Estimated } from '../likelihood/quantile.ts';

/** Shape 1/scale of the Weibull law behind a fit on ln time, with its standard error. */
export function weibullShape({ scale, covariance }: Fit): Estimated {
  return { value: 1 / scale, standardError: Math.sqrt(covariance.scale) / (scale * scale) };
}

/** Characteristic life exp(location), at which 1 − 1/e = 63.2 % have failed, with its standard error. */
export function characteristicLife({ location, covariance }: Fit): Estimated {
  const value = Math.exp(location);
  return { value, standardError: value * Math.sqrt(covariance.location) };
}

/** The share failed at the characteristic life: its profile interval is that of this quantile. */
export const CHARACTERISTIC_SHARE = -Math.expm1(-1);
