import { type Corner, isotonicCurve } from '../isotonic/failure-curve.ts';
import type { Possibly, Response } from '../isotonic/response.ts';
import { trimCurve } from './trim.ts';

/** The mean of the failure curve with its standard error, both on the scale of the levels. */
export interface CurveMean {
  readonly mean: number;
  readonly standardError: number;
  /** The share cut off at each end: 0 is the plain estimate. */
  readonly trim: number;
}

/**
 * The Spearman–Kärber estimate: the mean of the strength whose distribution is the failure curve, pooled so that it
 * never falls and joined by straight lines; for a symmetric law this is the median.
 *
 *   mean = Σ (pᵢ₊₁ − pᵢ)(xᵢ + xᵢ₊₁)/2,   variance = Σ pᵢ(1 − pᵢ)/nᵢ · ((xᵢ₊₁ − xᵢ₋₁)/2)²
 *
 * With `trim` = α the curve is first cut to the shares α to 1 − α and stretched to 0 to 1 (Hamilton, Russo and Thurston
 * 1977, Environmental Science and Technology 11, 714–719). The standard error of the trimmed estimate is by the delta
 * method on the same curve, with binomial variances; at α = 0 that is the formula above.
 *
 * It needs a curve that begins at α or below and ends at 1 − α or above; else there is no value and `why` names the
 * smallest trim that would do. `trim` is from 0 to below ½.
 */
export function spearmanKarber(responses: readonly Response[], trim = 0): Possibly<CurveMean> {
  if (!(trim >= 0 && trim < 0.5)) throw new RangeError(`trim ${trim} is not from 0 to below 0.5`);
  const corners = isotonicCurve(responses);
  const obstacle = whyNot(corners, trim);
  if (obstacle !== null) return { value: null, why: obstacle };
  const { mean, slopes } = trimCurve(corners, trim);
  let variance = 0;
  for (let i = 0; i < corners.length; i++) {
    const { share, drops } = corners[i]!;
    variance += (slopes[i]! ** 2 * share * (1 - share)) / drops;
  }
  return { value: { mean, standardError: Math.sqrt(variance), trim }, why: null };
}

/** The smallest trim at which an estimate exists, or null where none below ½ does. */
export function smallestTrim(responses: readonly Response[]): number | null {
  const corners = isotonicCurve(responses);
  if (corners.length < 2) return null;
  const needed = Math.max(corners[0]!.share, 1 - corners.at(-1)!.share);
  return needed < 0.5 ? needed : null;
}

function whyNot(corners: readonly Corner[], trim: number): string | null {
  if (corners.length < 2) return 'drops at two levels or more are needed';
  const lowest = corners[0]!.share;
  const highest = corners.at(-1)!.share;
  if (lowest <= trim && highest >= 1 - trim) return null;
  const ends: string[] = [];
  if (lowest > trim) ends.push(`${percent(lowest)} failed at the lowest level`);
  if (highest < 1 - trim) ends.push(`${percent(1 - highest)} survived the highest level`);
  const needed = Math.max(lowest, 1 - highest);
  const settles =
    needed < 0.5
      ? `a trim of ${percent(needed)} or more would do`
      : 'no trim below 50 % would do; levels further out are needed';
  return `${ends.join(' and ')}, more than the ${percent(trim)} that is cut off at each end; ${settles}`;
}

function percent(share: number): string {
  return `${Number((100 * share).toPrecision(3))} %`;
}
