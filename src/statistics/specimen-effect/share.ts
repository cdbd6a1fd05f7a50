import { normal } from '../laws/normal.ts';
import { judgeExistence, type NoEstimate } from '../likelihood/existence.ts';
import { fitLocationScale } from '../likelihood/fit.ts';
import { gatherObservations, type Sample } from '../likelihood/observation.ts';
import { type Peak, tryMaximise } from '../regression/newton.ts';
import type { Pattern } from './history.ts';
import { type Marginal, marginalLikelihood } from './marginal.ts';

/** The best fit with a given share of the variance between specimens. */
export interface ShareFit {
  /** Variance between specimens over total variance. */
  readonly share: number;
  readonly logLikelihood: number;
  /** Median of a single hit on a fresh specimen. */
  readonly location: number;
  /** Standard deviation of a single hit on a specimen taken at random. */
  readonly totalSpread: number;
  /** Of the location, as if the share were known. */
  readonly standardError: number;
}

/** The histories, ready to be fitted at any share. */
export interface Problem {
  readonly patterns: readonly Pattern[];
  readonly marginal: Marginal;
  /** Every hit by itself, as at share 0. */
  readonly hits: Sample;
  /** One threshold a specimen, as at share 1; null where a specimen survived a level at or above one that failed it. */
  readonly thresholds: Sample | null;
  /** Why the hits by themselves, as at share 0, have no estimate; null if they have. */
  readonly obstacle: NoEstimate | null;
  /** Middle and half of the range of the levels. */
  readonly origin: number;
  readonly unit: number;
}

/** Shares above this, short of 1, are not looked at: the integrand turns into a step, and the fit hardly differs from 1. */
export const LARGEST_SHARE = 0.95;

export function pose(patterns: readonly Pattern[], order: number): Problem | NoEstimate {
  const rows = patterns.flatMap(({ levels, signs, count }) =>
    Array.from(levels, (level, k) =>
      signs[k]! > 0 ? { lower: -Infinity, upper: level, count } : { lower: level, upper: Infinity, count },
    ),
  );
  const hits = gatherObservations(rows, 'identity');
  // Which levels overlap decides for every share below 1; no quadrature is needed to know.
  const existence = judgeExistence(hits);
  // Failures may lie below survivals on average only because weak specimens fail early: not so within a specimen.
  if (existence.kind !== 'exists' && existence.kind !== 'wrong-direction') return existence;
  const brackets = patterns.map(({ levels, signs, count }) => {
    let lower = -Infinity;
    let upper = Infinity;
    for (let k = 0; k < levels.length; k++) {
      if (signs[k]! > 0) upper = Math.min(upper, levels[k]!);
      else lower = Math.max(lower, levels[k]!);
    }
    return { lower, upper, count };
  });
  const threshold = brackets.every(({ lower, upper }) => lower < upper)
    ? gatherObservations(brackets, 'identity')
    : null;
  const levels = rows.map((r) => (r.lower === -Infinity ? r.upper : r.lower));
  return {
    patterns,
    marginal: marginalLikelihood(patterns, order),
    hits,
    thresholds: threshold,
    obstacle: existence.kind === 'exists' ? null : existence,
    origin: (Math.min(...levels) + Math.max(...levels)) / 2,
    unit: (Math.max(...levels) - Math.min(...levels)) / 2,
  };
}

/**
 * The best location and spread at a share of the variance between specimens. At a fixed ratio of the spreads the
 * log-likelihood is concave in (η, b), being the logarithm of an integral of a log-concave function (Prékopa 1973), so
 * that Newton's method finds the one maximum. At share 0 it is a probit fit of the hits, at share 1 the interval
 * likelihood of one threshold a specimen. Null where the data rule the share out, where no positive spread fits best, or
 * where the likelihood is too flat to settle.
 *
 * @param near a fit at another share, to begin from
 */
export function fitAtShare(problem: Problem, share: number, near: ShareFit | null = null): ShareFit | null {
  if (share === 0 || share === 1) {
    const sample = share === 0 ? problem.hits : problem.thresholds;
    const fit = sample === null ? null : fitLocationScale(sample, normal);
    if (fit === null || fit.kind !== 'exists') return null;
    const { logLikelihood, location, scale, covariance } = fit;
    return {
      share,
      logLikelihood,
      location,
      totalSpread: scale,
      standardError: Math.sqrt(covariance.location),
    };
  }
  const { origin, unit, marginal } = problem;
  const theta = Math.sqrt(share / (1 - share));
  const inner = Math.sqrt(1 - share);
  const whole = emptyPeak(3);
  const b = near === null ? 1 / unit : 1 / (near.totalSpread * inner);
  const evaluate = (point: Float64Array, into: Peak): void => {
    marginal.evaluate(origin, point[0]!, point[1]!, theta, whole);
    into.value = whole.value;
    into.gradient.set(whole.gradient.subarray(0, 2));
    into.hessian[0] = whole.hessian[0]!;
    into.hessian[1] = into.hessian[2] = whole.hessian[1]!;
    into.hessian[3] = whole.hessian[4]!;
  };
  const start = Float64Array.of(near === null ? 0 : -b * (near.location - origin), b);
  // Where the integrand is nearly a step for some specimens, quadrature carries fewer digits.
  const found = tryMaximise(evaluate, start, theta > 2.5 ? 1e-6 : QUADRATURE_NOISE);
  if (found === null) return null;
  const { point, value, covariance } = found;
  const steepness = point[1]!;
  if (!(steepness > 0)) return null;
  const offset = -point[0]! / steepness;
  const variance = covariance[0]! + 2 * offset * covariance[1]! + offset * offset * covariance[3]!;
  return {
    share,
    logLikelihood: value,
    location: origin + offset,
    totalSpread: 1 / (steepness * inner),
    standardError: Math.sqrt(variance) / steepness,
  };
}

/** Relative error to which quadrature and its derivatives agree. */
export const QUADRATURE_NOISE = 1e-9;

export function emptyPeak(size: number): Peak {
  return { value: 0, gradient: new Float64Array(size), hessian: new Float64Array(size * size) };
}
