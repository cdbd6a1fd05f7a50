import type { Law } from '../laws/laws.ts';
import type { Fit } from './fit.ts';
import { type Estimated, estimateFailure } from './quantile.ts';

/** Two ends; null where unbounded. */
export interface Limits {
  readonly lower: number | null;
  readonly upper: number | null;
}

/**
 * value ± critical·standard error: Wald's interval on the natural scale of the printed value. It may leave the range of
 * the quantity.
 *
 * @param critical normalCritical(level, sides); for a one-sided bound read one end
 */
export function waldInterval({ value, standardError }: Estimated, critical: number): Limits {
  return { lower: value - critical * standardError, upper: value + critical * standardError };
}

/**
 * Wald's interval on the logarithm of a positive quantity: value·exp(± critical·error/value). For a quantile of a lognormal
 * or Weibull law this is the interval on the fitted scale, location + z·scale ± critical·error.
 */
export function waldIntervalOnLog({ value, standardError }: Estimated, critical: number): Limits {
  const factor = Math.exp((critical * standardError) / value);
  return { lower: value / factor, upper: value * factor };
}

/** Wald's interval of the failure probability at x, taken on z = F⁻¹(probability), hence within [0, 1]. */
export function waldFailure(fit: Fit, law: Law, x: number, critical: number): Limits {
  const limits = waldInterval(estimateFailure(fit, law, x).z, critical);
  return { lower: law.standard.cdf(limits.lower!), upper: law.standard.cdf(limits.upper!) };
}
