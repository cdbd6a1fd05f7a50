import { stepChange } from './change-point.ts';
import { type CusumPoint, cusumChart, type ShiftStart, shiftStart } from './cusum.ts';

/** A chart against slow drift, and what it found. */
export interface Drift {
  readonly points: readonly CusumPoint[];
  /** Null while the chart is quiet. */
  readonly shift: ShiftStart | null;
  /** The most likely first point of a step, and the places that may be it. */
  readonly step: {
    readonly start: number;
    readonly from: number;
    readonly to: number;
    readonly level: number;
  } | null;
}

/**
 * Looks for a drift from a level by the cumulative sum, and for when it began: two readings of the start, since a creep has none.
 *
 * @param level and sigma of a base period
 * @param design allowance and decision limit in sigma; ½ and 5 find a shift of one sigma after some ten points, with a false alarm in
 *   465 (Montgomery; see the bench)
 */
export function findDrift(
  values: readonly number[],
  level: number,
  sigma: number,
  design: { readonly allowance: number; readonly decision: number } = { allowance: 0.5, decision: 5 },
): Drift {
  if (!(sigma > 0)) throw new RangeError(`standard deviation ${sigma} is not above 0`);
  const chart = { target: level, allowance: design.allowance * sigma, decision: design.decision * sigma };
  const points = cusumChart(values, chart);
  const shift = shiftStart(points, chart);
  const step = shift === null ? null : stepChange(values.slice(0, shift.signal + 1), level, sigma);
  return { points, shift, step };
}
