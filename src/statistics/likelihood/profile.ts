import { maximiseThrough, type ProfileBasis } from './constrained.ts';
import { constantSupremum, thresholdSupremum } from './limits.ts';
import { fromScale, levelFromScale, toScale } from './observation.ts';
import { findInside, findOutward } from './outward.ts';

/** One end of a profile-likelihood interval. */
export interface ProfileEnd {
  /** On the original scale; null where the interval is unbounded on this side. */
  readonly value: number | null;
  /**
   * - `ratio`: the likelihood ratio reaches its critical value here;
   * - `level`: the likelihood drops here, at a tested level; the interval is open at it;
   * - `constant-probability`: unbounded, since one failure probability at all levels is not rejected;
   * - `natural-limit`: the limit of the parameter itself (scale 0; probability 0 or 1) is not rejected;
   * - `no-supremum`: no interval, since the likelihood has no bound (equal exact values) or there are no data.
   */
  readonly why: 'ratio' | 'level' | 'constant-probability' | 'natural-limit' | 'no-supremum';
}

/** A likelihood-ratio interval: all values whose statistic 2(sup − profile) is at most the critical value. */
export interface ProfileInterval {
  readonly lower: ProfileEnd;
  readonly upper: ProfileEnd;
}

export const NO_INTERVAL: ProfileInterval = {
  lower: { value: null, why: 'no-supremum' },
  upper: { value: null, why: 'no-supremum' },
};

/**
 * Likelihood-ratio statistic of the hypothesis that a share p has failed at x, with the location and scale (fitted
 * scale) that fit best under it; the scale is 0 or ∞ where a limit does, and the location then not finite or at x.
 */
export function testQuantile(
  basis: ProfileBasis,
  p: number,
  x: number,
): { readonly statistic: number; readonly location: number; readonly scale: number } {
  const y = toScale(x, basis.sample.scale);
  const z = basis.law.quantile(p);
  const { value, steepness } = maximiseThrough(basis, y, z, startAt(basis, y, z));
  const scale = 1 / steepness;
  return {
    statistic: Math.max(0, 2 * (basis.supremum - value)),
    location: z === 0 ? y : y - z * scale,
    scale,
  };
}

/**
 * Profile-likelihood interval of the quantile at share failed p, on the original scale. It needs no best fit: without one
 * the supremum takes its place.
 *
 * The profile over all scales, both limits included, rises to one side of its top and falls to the other, since it is
 * the maximum of a concave function on the lines through one point. It is unbounded upward exactly when a constant
 * failure probability of at most p is not rejected, downward when one of at least p is not: these are what the lines
 * tend to.
 *
 * @param critical of the statistic: likelihoodRatioCritical, or a calibrated one. For a one-sided bound read one end
 */
export function profileQuantile(basis: ProfileBasis, p: number, critical: number): ProfileInterval {
  const known = knownOf(basis);
  const key = `${p} ${critical}`;
  const interval = known.get(key) ?? findQuantileInterval(basis, p, critical);
  known.set(key, interval);
  return interval;
}

// A calibrated interval sets out from that of the profile, which is then printed beside it: the same one.
const intervals = new WeakMap<ProfileBasis, Map<string, ProfileInterval>>();

function knownOf(basis: ProfileBasis): Map<string, ProfileInterval> {
  const known = intervals.get(basis) ?? new Map<string, ProfileInterval>();
  intervals.set(basis, known);
  return known;
}

function findQuantileInterval(basis: ProfileBasis, p: number, critical: number): ProfileInterval {
  const { sample, law, ends, supremum, unit } = basis;
  if (!Number.isFinite(supremum) || sample.size === 0) return NO_INTERVAL;
  const z = law.quantile(p);
  const threshold = supremum - 0.5 * critical;
  const excess = profileExcess(basis, critical, (y) => ({ y, z }));
  const inner = findInnerQuantile(basis, z, excess);

  const end = (side: -1 | 1): ProfileEnd => {
    const limit =
      side > 0 ? constantSupremum(ends, law, -Infinity, z) : constantSupremum(ends, law, z, Infinity);
    if (limit >= threshold || inner === null) return { value: null, why: 'constant-probability' };
    let from = inner;
    // Where one threshold fits everything the profile drops at the end of the gap, and at the tied level.
    const barrier = side > 0 ? ends.lowestUpper : ends.highestLower;
    if (ends.highestLower <= ends.lowestUpper && side * (barrier - inner) > 0) {
      if (excess(barrier) > 0) return { value: levelFromScale(barrier, sample.scale), why: 'level' };
      from = barrier;
    }
    const root = findOutward(excess, from, side * stepFrom(basis, z, unit));
    return root === null
      ? { value: null, why: 'constant-probability' }
      : { value: fromScale(root, sample.scale), why: 'ratio' };
  };
  return { lower: end(-1), upper: end(1) };
}

/**
 * Profile-likelihood interval of the failure probability at x. An end of 0 or 1 is the natural limit, which is not rejected.
 * The profile is concave in z = F⁻¹(probability).
 *
 * @returns ends as failure probabilities, and the same as reliabilities, each with the digits of its own tail
 */
export function profileFailure(
  basis: ProfileBasis,
  x: number,
  critical: number,
): { readonly failure: ProfileInterval; readonly reliability: ProfileInterval } {
  const { sample, law, ends, supremum, fit } = basis;
  const y = toScale(x, sample.scale);
  if (!Number.isFinite(supremum) || sample.size === 0 || !Number.isFinite(y))
    return { failure: NO_INTERVAL, reliability: NO_INTERVAL };
  const threshold = supremum - 0.5 * critical;
  const excess = profileExcess(basis, critical, (z) => ({ y, z }));
  const open = {
    lower: ends.failed + ends.closed === 0 || thresholdSupremum(sample, ends, law, y, Infinity) >= threshold,
    upper:
      ends.survived + ends.closed === 0 || thresholdSupremum(sample, ends, law, -Infinity, y) >= threshold,
  };
  const centre = fit.kind === 'exists' ? (y - fit.location) / fit.scale : findInnerZ(basis, y, excess);
  const step = fit.kind === 'exists' ? standardErrorOfZ(basis, y) : 1;
  const lower = open.lower || centre === null ? null : findOutward(excess, centre, -step);
  const upper = open.upper || centre === null ? null : findOutward(excess, centre, step);
  const end = (z: number | null, value: number): ProfileEnd => ({
    value,
    why: z === null ? 'natural-limit' : 'ratio',
  });
  return {
    failure: {
      lower: end(lower, lower === null ? 0 : law.cdf(lower)),
      upper: end(upper, upper === null ? 1 : law.cdf(upper)),
    },
    reliability: {
      lower: end(upper, upper === null ? 0 : law.sf(upper)),
      upper: end(lower, lower === null ? 1 : law.sf(lower)),
    },
  };
}

/**
 * How far the signed root of the statistic lies above that of its critical value: nearly straight in the parameter, which
 * saves the root finder steps.
 */
function profileExcess(
  basis: ProfileBasis,
  critical: number,
  line: (parameter: number) => { y: number; z: number },
): (parameter: number) => number {
  const root = Math.sqrt(critical);
  let before: number | null = null;
  return (parameter) => {
    const { y, z } = line(parameter);
    const { value, steepness } = maximiseThrough(basis, y, z, before ?? startAt(basis, y, z));
    // The neighbour's is nearer than any guess, unless it is a limit.
    before = steepness > 0 && steepness < Infinity ? steepness : null;
    return Math.sqrt(Math.max(0, 2 * (basis.supremum - value))) - root;
  };
}

/**
 * 1/scale to begin with for lines through (y, z). In a tail that of the line through the middle of the data; else that
 * of the fit, unless y is so far off that its levels would be out of sight.
 */
function startAt({ fit, ends, unit }: ProfileBasis, y: number, z: number): number {
  const middle = fit.kind === 'exists' ? fit.location : 0.5 * (ends.lowest + ends.highest);
  const straight = z / (y - middle);
  if (Math.abs(z) > 2 && straight > 0 && straight < Infinity) return straight;
  const reach = Math.max(unit, Math.abs(ends.highest - y), Math.abs(ends.lowest - y));
  return fit.kind === 'exists' ? Math.min(1 / fit.scale, 20 / reach) : 4 / reach;
}

function stepFrom({ fit }: ProfileBasis, z: number, unit: number): number {
  if (fit.kind !== 'exists') return 0.5 * unit;
  const { location, cross, scale } = fit.covariance;
  return Math.min(
    4 * unit,
    2 * Math.sqrt(Math.max(location + z * (2 * cross + z * scale), 1e-12 * location)),
  );
}

function standardErrorOfZ({ fit }: ProfileBasis, y: number): number {
  if (fit.kind !== 'exists') return 1;
  const { location, cross, scale } = fit.covariance;
  const z = (y - fit.location) / fit.scale;
  return (2 * Math.sqrt(location + z * (2 * cross + z * scale))) / fit.scale;
}

/** A quantile within the interval, on the fitted scale; null when none is finite. */
function findInnerQuantile(
  { fit, ends, sample, law, unit }: ProfileBasis,
  z: number,
  excess: (y: number) => number,
): number | null {
  switch (fit.kind) {
    case 'exists':
      return fit.location + fit.scale * z;
    case 'gap':
      return 0.5 * (ends.highestLower + ends.lowestUpper);
    case 'no-failure':
      return findInside(excess, ends.highest, unit);
    case 'all-failed':
      return findInside(excess, ends.lowest, -unit);
    case 'common-level':
    case 'single-level': {
      const level = ends.lowestUpper;
      if (excess(level) <= 0) return level;
      // More failures there than p put the quantile below the level, fewer above.
      const side = law.cdf(z) < fit.failed / fit.total ? -1 : 1;
      return findInside(excess, level, side * unit, true);
    }
    case 'wrong-direction': {
      const middle = 0.5 * (ends.lowest + ends.highest);
      if (excess(middle) <= 0) return middle;
      const side = law.cdf(z) < ends.failed / (ends.failed + ends.survived) ? -1 : 1;
      return findInside(excess, middle, side * unit);
    }
    default:
      return sample.size === 0 ? null : ends.lowest;
  }
}

/** A z = F⁻¹(failure probability at y) within the interval, where there is no best fit; null when none is found. */
function findInnerZ(
  { ends, fit, law }: ProfileBasis,
  y: number,
  excess: (z: number) => number,
): number | null {
  const tied = fit.kind === 'common-level' || fit.kind === 'single-level';
  const share =
    tied && y === ends.lowestUpper ? fit.failed / fit.total : ends.failed / (ends.failed + ends.survived);
  const best = law.quantile(share);
  if (Number.isFinite(best) && excess(best) <= 0) return best;
  for (let z = 1; z < 1e9; z *= 2) {
    if (excess(-z) <= 0) return -z;
    if (excess(z) <= 0) return z;
  }
  return null;
}
