import type { ProfileBasis } from './constrained.ts';
import { fitLocation } from './fit-location.ts';
import { constantSupremum, thresholdSupremum } from './limits.ts';
import { findInside, findOutward } from './outward.ts';
import { NO_INTERVAL, type ProfileInterval } from './profile.ts';

/**
 * Profile-likelihood interval of the scale parameter (of ln x for laws on the log scale). The upper end is null when one
 * failure probability at all levels is not rejected, the lower end is 0 when one threshold for all strengths is not.
 *
 * @param critical of the statistic: likelihoodRatioCritical, or a calibrated one
 */
export function profileScale(basis: ProfileBasis, critical: number): ProfileInterval {
  const { sample, law, ends, supremum, fit, unit } = basis;
  if (!Number.isFinite(supremum) || sample.size === 0) return NO_INTERVAL;
  const threshold = supremum - 0.5 * critical;
  const anyLarge = constantSupremum(ends, law, -Infinity, Infinity) >= threshold;
  const anySmall = thresholdSupremum(sample, ends, law, -Infinity, Infinity) >= threshold;
  const root = Math.sqrt(critical);
  // The logarithm of the scale straightens the profile and keeps the scale positive.
  const excess = (log: number) => {
    // Where the location runs off, every observation reaches probability 1.
    const best = fitLocation(sample, law, Math.exp(log))?.logLikelihood ?? 0;
    return Math.sqrt(Math.max(0, 2 * (supremum - best))) - root;
  };
  const inner =
    fit.kind === 'exists' ? Math.log(fit.scale) : findInside(excess, Math.log(unit), anySmall ? -1 : 1);
  const step = fit.kind === 'exists' ? (2 * Math.sqrt(fit.covariance.scale)) / fit.scale : 1;
  const lower = anySmall || inner === null ? null : findOutward(excess, inner, -step);
  const upper = anyLarge || inner === null ? null : findOutward(excess, inner, step);
  return {
    lower: lower === null ? { value: 0, why: 'natural-limit' } : { value: Math.exp(lower), why: 'ratio' },
    upper:
      upper === null
        ? { value: null, why: 'constant-probability' }
        : { value: Math.exp(upper), why: 'ratio' },
  };
}
