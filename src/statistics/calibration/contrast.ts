import type { ProfileBasis } from '../likelihood/constrained.ts';
import { fromScale } from '../likelihood/observation.ts';
import { bestLine } from './best-line.ts';
import type { CalibratedLimits } from './calibrate.ts';

/**
 * A quantile of one construction with calibrated limits, on the original scale (J, mm), as `calibratedQuantile` gives
 * them: two limits at a level make two-sided intervals of a contrast at that level, one-sided bounds its bounds.
 */
export interface BoundedQuantile extends CalibratedLimits {
  /**
   * Where the likelihood is best: the estimate; without one the middle of the gap or the level that failures and
   * survivals share (`bestLine`); not finite where it runs off.
   */
  readonly best: number;
}

/** The quantile at share failed p with limits that were found for it. */
export function boundedQuantile(basis: ProfileBasis, p: number, limits: CalibratedLimits): BoundedQuantile {
  const { location, scale } = bestLine(basis);
  const { lower, upper } = limits;
  return { best: fromScale(location + scale * basis.law.quantile(p), basis.sample.scale), lower, upper };
}

/**
 * Limits of the difference second − first of quantiles of two independent tests:
 *
 *   upper = m₂ − m₁ + √((u₂ − m₂)² + (m₁ − l₁)²), and lower likewise with l₂ and u₁,
 *
 * so that each side keeps the length of the interval that it comes from, skewed and calibrated as that is (recovery of
 * variances from limits; Zou and Donner 2008, Stat. Med. 27, 1693–1702, equation 7). No further simulation is needed.
 * Unbounded on a side where either limit behind it is. Where a best value is not finite the farthest pair of limits is
 * taken, which holds at least as often. How often it holds: bench/contrast-coverage.md.
 *
 * @example difference({ best: 40, lower: 37, upper: 43 }, { best: 50, lower: 46, upper: 54 }) → 5 to 15
 */
export function differenceOfQuantiles(first: BoundedQuantile, second: BoundedQuantile): CalibratedLimits {
  return {
    lower: negative(farthestAbove(second, first)),
    upper: farthestAbove(first, second),
  };
}

/** Upper limit of `to` − `from`. */
function farthestAbove(from: BoundedQuantile, to: BoundedQuantile): number | null {
  if (to.upper === null || from.lower === null) return null;
  const middle = to.best - from.best;
  if (!Number.isFinite(middle)) return to.upper - from.lower;
  return middle + Math.hypot(to.upper - to.best, from.best - from.lower);
}

function negative(value: number | null): number | null {
  return value === null ? null : -value;
}

/**
 * Limits of the ratio second/first of positive quantiles of two independent tests. Laws of ln x: the difference of
 * logarithms, taken back. Others: the ratios r at which the limit of second − r·first is nought (Donner and Zou 2012,
 * Stat. Methods Med. Res. 21, 347–359, section 2), which for symmetric intervals is Fieller's. Unbounded upwards where
 * the first quantile's lower limit is not above nought; a lower limit of null means nought.
 *
 * @param scale on which the law was fitted
 */
export function ratioOfQuantiles(
  first: BoundedQuantile,
  second: BoundedQuantile,
  scale: 'identity' | 'log',
): CalibratedLimits {
  if (scale === 'log') {
    const { lower, upper } = differenceOfQuantiles(logarithms(first), logarithms(second));
    return { lower: lower === null ? null : Math.exp(lower), upper: upper === null ? null : Math.exp(upper) };
  }
  return { lower: leastRatio(first, second), upper: greatestRatio(first, second) };
}

/** Below 0 there is no strength: such a limit is none on the scale of logarithms. */
function logarithms({ best, lower, upper }: BoundedQuantile): BoundedQuantile {
  const log = (x: number | null) => (x === null || x <= 0 ? null : Math.log(x));
  return { best: best > 0 ? Math.log(best) : Number.NEGATIVE_INFINITY, lower: log(lower), upper: log(upper) };
}

/** r from 0 up to the ratio of the best values with second − r·first = √((second − lower)² + r²·(upper − first)²). */
function leastRatio(first: BoundedQuantile, second: BoundedQuantile): number | null {
  if (second.lower === null || second.lower <= 0 || first.upper === null || first.upper <= 0) return null;
  const isKnown = Number.isFinite(first.best) && Number.isFinite(second.best);
  if (!isKnown || first.best <= 0) return second.lower / first.upper;
  const product = first.best * second.best;
  const above = second.lower * (2 * second.best - second.lower);
  const below = first.upper * (2 * first.best - first.upper);
  return above / (product + Math.sqrt(Math.max(0, product * product - above * below)));
}

/** r above the ratio of the best values with r·first − second = √((upper − second)² + r²·(first − lower)²). */
function greatestRatio(first: BoundedQuantile, second: BoundedQuantile): number | null {
  if (second.upper === null || first.lower === null || first.lower <= 0) return null;
  const isKnown = Number.isFinite(first.best) && Number.isFinite(second.best);
  if (!isKnown || second.best <= 0) return second.upper / first.lower;
  const product = first.best * second.best;
  const above = second.upper * (2 * second.best - second.upper);
  const below = first.lower * (2 * first.best - first.lower);
  return (product + Math.sqrt(Math.max(0, product * product - above * below))) / below;
}
