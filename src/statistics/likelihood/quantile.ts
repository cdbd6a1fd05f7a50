import type { Law } from '../laws/laws.ts';
import type { Covariance, Fit } from './fit.ts';
import { fromScale, toScale } from './observation.ts';

/** A number with its standard error, both as they are printed. */
export interface Estimated {
  readonly value: number;
  readonly standardError: number;
}

/**
 * The strength or life below which a share p fails, on the original scale, with its standard error by the delta method: of
 * y = location + z·scale, and where the law is of ln x, of x = eʸ (x times that of y).
 *
 * @param p share failed, above 0 and below 1
 */
export function estimateQuantile(fit: Fit, law: Law, p: number): Estimated {
  const z = law.standard.quantile(p);
  const value = fromScale(fit.location + z * fit.scale, law.scale);
  const error = Math.sqrt(varianceAt(fit.covariance, z));
  return { value, standardError: law.scale === 'log' ? value * error : error };
}

/** The scale parameter of the fitted law (of ln x on the log scale) with its standard error. */
export function estimateScale(fit: Fit): Estimated {
  return { value: fit.scale, standardError: Math.sqrt(fit.covariance.scale) };
}

/** The probability of failure at or below x, with what an interval on a scale without limits needs. */
export interface FailureEstimate {
  readonly failure: number;
  readonly reliability: number;
  /** Of both, by the delta method: f(z) times the error of z. */
  readonly standardError: number;
  /** z = F⁻¹(failure), which is normal in large samples sooner than the probability itself. */
  readonly z: Estimated;
}

/** Probability of failure at x > 0 (any x on the identity scale), where z = (y − location)/scale. */
export function estimateFailure(fit: Fit, law: Law, x: number): FailureEstimate {
  const z = (toScale(x, law.scale) - fit.location) / fit.scale;
  const error = Number.isFinite(z) ? Math.sqrt(varianceAt(fit.covariance, z)) / fit.scale : 0;
  return {
    failure: law.standard.cdf(z),
    reliability: law.standard.sf(z),
    standardError: law.standard.pdf(z) * error,
    z: { value: z, standardError: error },
  };
}

/** Variance of location + z·scale. */
export function varianceAt({ location, cross, scale }: Covariance, z: number): number {
  return location + z * (2 * cross + z * scale);
}
