import { fitLine, type Line } from '../straight-line/fit.ts';
import { type Crossing, inversePrediction } from '../straight-line/inverse-prediction.ts';

/** A reading of a depth at a distance. */
export interface DepthReading {
  /** km */
  readonly distance: number;
  /** mm */
  readonly depth: number;
}

/** When a tread is down to its limit. */
export interface WearCrossing {
  readonly line: Line;
  /** Loss in mm per 1000 km, and its standard error. */
  readonly rate: number;
  readonly rateError: number;
  /** Null where the depth does not fall. */
  readonly crossing: Crossing | null;
  /** How many times the longest distance read the crossing lies at: above 1 it is an extrapolation. */
  readonly extrapolation: number | null;
  /** Why there is no crossing, or no interval of it. */
  readonly why: 'not-falling' | 'slope-not-significant' | null;
}

/**
 * A line through depth readings and the distance at which it reaches the limit, with Fieller's interval: unbounded where the slope is
 * not told from 0 (g ≥ 1).
 *
 * @param limit mm
 * @param of the mean line, or a single reading at the limit
 * @throws RangeError for fewer than three readings or all at one distance
 */
export function wearCrossing(
  readings: readonly DepthReading[],
  limit: number,
  of: 'mean-line' | 'reading',
  level: number,
): WearCrossing {
  const distances = readings.map((one) => one.distance);
  const line = fitLine(
    distances,
    readings.map((one) => one.depth),
  );
  const base = { line, rate: -1000 * line.slope, rateError: 1000 * line.slopeError };
  if (!(line.slope < 0)) return { ...base, crossing: null, extrapolation: null, why: 'not-falling' };
  const crossing = inversePrediction(line, limit, of, level);
  return {
    ...base,
    crossing,
    extrapolation: crossing.value / Math.max(...distances),
    why: crossing.kind === 'unbounded' ? 'slope-not-significant' : null,
  };
}

/** Places, from 0, at which a depth is larger than the one before by more than the scatter allows: a point that moved, or was read hot. */
export function growingDepths(readings: readonly DepthReading[], readingDeviation: number): number[] {
  const ordered = readings.map((one, i) => ({ ...one, i })).sort((a, b) => a.distance - b.distance);
  // Two readings differ by √2 times the scatter of one; three of these are beyond chance.
  const bound = 3 * Math.SQRT2 * readingDeviation;
  return ordered.slice(1).flatMap((one, k) => (one.depth - ordered[k]!.depth > bound ? [one.i] : []));
}
