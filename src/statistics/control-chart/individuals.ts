import { mean } from '../summary/moments.ts';
import { chartConstants } from './constants.ts';
import { type ChartLimits, checkBase } from './limits.ts';

/** Limits for single values and for the steps between them. */
export interface IndividualsLimits {
  readonly individuals: ChartLimits;
  readonly movingRange: ChartLimits;
  /** Standard deviation by the mean moving range over d2 = 1.128: of the scatter from one to the next. */
  readonly sigma: number;
}

/** |xᵢ − xᵢ₋₁|: one fewer than the values. */
export function movingRanges(values: readonly number[]): number[] {
  return values.slice(1).map((value, i) => Math.abs(value - values[i]!));
}

/**
 * Limits of individuals and moving ranges of two from a base period: mean ± 3·MR̄/d2, and D4·MR̄ (ISO 7870-2; Montgomery,
 * Introduction to Statistical Quality Control, chapter 6). Limits of 10 points leave 23 of 1000 quiet ones outside, of 25 nine, of 100
 * four, where 2.7 are meant (bench/control-charts.md).
 *
 * @throws RangeError for fewer than 10 points or for points that do not differ
 */
export function individualsLimits(base: readonly number[]): IndividualsLimits {
  checkBase(base.length, base);
  const range = mean(movingRanges(base));
  if (!(range > 0)) throw new RangeError('the points of the base period do not differ; no limits follow');
  const { d2, D3, D4, E2 } = chartConstants(2);
  const centre = mean(base);
  return {
    individuals: { centre, lower: centre - E2 * range, upper: centre + E2 * range },
    movingRange: { centre: range, lower: D3 * range, upper: D4 * range },
    sigma: range / d2,
  };
}
