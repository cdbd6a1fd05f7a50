import { levelFromScale, type Sample } from './observation.ts';

/** Why the likelihood has no single best location and scale. Levels are on the original scale. */
export type NoEstimate =
  /** Nothing was observed. */
  | { readonly kind: 'empty' }
  /** Nothing failed: the higher the location, the better. */
  | { readonly kind: 'no-failure'; readonly highestSurvived: number }
  /** Nothing survived any level: the lower the location, the better. */
  | { readonly kind: 'all-failed'; readonly lowestFailed: number }
  /** Failures and survivals at one level only: a share failed there, no location and no scale. */
  | { readonly kind: 'single-level'; readonly level: number; readonly failed: number; readonly total: number }
  /** All that failed lies above all that survived: any small scale fits with any location between. */
  | { readonly kind: 'gap'; readonly highestSurvived: number; readonly lowestFailed: number }
  /** Outcomes mix at one level only: the scale runs to 0 with the location at that level. */
  | { readonly kind: 'common-level'; readonly level: number; readonly failed: number; readonly total: number }
  /** Exact values, all equal, and nothing against them: the likelihood grows without bound as the scale runs to 0. */
  | { readonly kind: 'single-value'; readonly value: number }
  /** Failures on average no higher than survivals (means on the fitted scale): no positive scale fits best. */
  | { readonly kind: 'wrong-direction'; readonly meanFailed: number; readonly meanSurvived: number };

export type Existence = { readonly kind: 'exists' } | NoEstimate;

const EXISTS: Existence = { kind: 'exists' };

/**
 * Decides from the data alone whether a finite location and a positive finite scale maximise the likelihood. Exact for
 * every mixture of observations and every law with a log-concave density and unbounded support.
 *
 * With η = −location/scale and b = 1/scale the log-likelihood is concave, so that it has a maximum in b > 0 unless it
 * keeps rising along some direction (Rockafellar 1970, theorem 27.1) or is best at b = 0:
 *
 * - (−1, 0) or (1, 0): nothing failed, or nothing survived;
 * - (−t, 1): one threshold t lies in every closed interval [lower, upper]. For failures and survivals this is the lack of
 *   overlap in more than a point (Silvapulle 1981, JRSS B 43, 310–313);
 * - at b = 0 (the scale runs to ∞) an interval closed on both sides, or an exact value, has probability 0. With failures
 *   and survivals only, the derivative to b there has the sign of mean failure level − mean survival level (ibid.).
 */
export function judgeExistence(sample: Sample): Existence {
  const ends = findEnds(sample);
  const { highestLower, lowestUpper, failed, survived, closed, exact, scale } = ends;
  const level = (y: number) => levelFromScale(y, scale);
  if (sample.size === 0) return { kind: 'empty' };
  if (failed + closed === 0) return { kind: 'no-failure', highestSurvived: level(highestLower) };
  if (survived + closed === 0) return { kind: 'all-failed', lowestFailed: level(lowestUpper) };
  if (highestLower < lowestUpper)
    return { kind: 'gap', highestSurvived: level(highestLower), lowestFailed: level(lowestUpper) };
  if (highestLower === lowestUpper) {
    if (exact) return { kind: 'single-value', value: level(lowestUpper) };
    const tie = countAt(sample, lowestUpper);
    const alone = tie.total === failed + survived + closed;
    return {
      kind: alone && closed === 0 ? 'single-level' : 'common-level',
      level: level(lowestUpper),
      ...tie,
    };
  }
  if (closed > 0) return EXISTS;
  const meanFailed = ends.failedSum / failed;
  const meanSurvived = ends.survivedSum / survived;
  // Means that are equal on paper may differ in the last digits.
  const noise = 1e-12 * (Math.abs(meanFailed) + Math.abs(meanSurvived));
  return meanFailed - meanSurvived > noise ? EXISTS : { kind: 'wrong-direction', meanFailed, meanSurvived };
}

/** Failures that end at a level, and all observations that end there: all that has a say as the scale runs to 0. */
export function countAt(sample: Sample, y: number): { failed: number; total: number } {
  let failed = 0;
  let total = 0;
  for (let i = 0; i < sample.size; i++) {
    const count = sample.count[i]!;
    if (sample.upper[i] === y) failed += count;
    if (sample.upper[i] === y || sample.lower[i] === y) total += count;
  }
  return { failed, total };
}

/** What the ends of a sample say at a glance, on the fitted scale. */
export interface Ends {
  readonly scale: 'identity' | 'log';
  readonly highestLower: number;
  readonly lowestUpper: number;
  readonly lowest: number;
  readonly highest: number;
  /** Open below, open above, closed on both sides (exact values among them). */
  readonly failed: number;
  readonly survived: number;
  readonly closed: number;
  readonly exact: boolean;
  readonly failedSum: number;
  readonly survivedSum: number;
}

export function findEnds(sample: Sample): Ends {
  let highestLower = -Infinity;
  let lowestUpper = Infinity;
  let lowest = Infinity;
  let highest = -Infinity;
  let failed = 0;
  let survived = 0;
  let closed = 0;
  let exact = false;
  let failedSum = 0;
  let survivedSum = 0;
  for (let i = 0; i < sample.size; i++) {
    const low = sample.lower[i]!;
    const high = sample.upper[i]!;
    const count = sample.count[i]!;
    if (low > highestLower) highestLower = low;
    if (high < lowestUpper) lowestUpper = high;
    if (low === -Infinity) {
      failed += count;
      failedSum += count * high;
    } else {
      lowest = Math.min(lowest, low);
      highest = Math.max(highest, low);
    }
    if (high === Infinity) {
      survived += count;
      survivedSum += count * low;
    } else {
      lowest = Math.min(lowest, high);
      highest = Math.max(highest, high);
    }
    if (low !== -Infinity && high !== Infinity) {
      closed += count;
      if (low === high) exact = true;
    }
  }
  return {
    scale: sample.scale,
    highestLower,
    lowestUpper,
    lowest,
    highest,
    failed,
    survived,
    closed,
    exact,
    failedSum,
    survivedSum,
  };
}
