/** A design of the two-sided cumulative sum, in the unit of the points. */
export interface CusumDesign {
  readonly target: number;
  /** k: half of the shift that is to be found, commonly ½σ. */
  readonly allowance: number;
  /** h: the sum at which to act, commonly 4σ or 5σ. */
  readonly decision: number;
}

/** A point of the chart. */
export interface CusumPoint {
  /** max(0, previous + x − target − k) */
  readonly high: number;
  /** max(0, previous + target − k − x) */
  readonly low: number;
  /** Where a sum passes the decision limit. */
  readonly signal: 'high' | 'low' | null;
}

/** The tabular cumulative sum (Page 1954; NIST/SEMATECH e-Handbook 6.3.2.3). It runs on after a signal. */
export function cusumChart(
  values: readonly number[],
  { target, allowance, decision }: CusumDesign,
): CusumPoint[] {
  if (!(allowance >= 0 && decision > 0))
    throw new RangeError(`allowance ${allowance} and decision limit ${decision} make no chart`);
  let high = 0;
  let low = 0;
  return values.map((value) => {
    high = Math.max(0, high + (value - target) - allowance);
    low = Math.max(0, low + (target - value) - allowance);
    const signal = high > decision && high >= low ? 'high' : low > decision ? 'low' : null;
    return { high, low, signal };
  });
}

/** When a shift began, as the cumulative sum has it. */
export interface ShiftStart {
  readonly direction: 'high' | 'low';
  /** Place of the first signal, from 0. */
  readonly signal: number;
  /** Place of the first point after the sum last stood at 0: the first one that is taken as shifted. */
  readonly start: number;
  /** Level since then: target ± (k + C/N), C the sum at the signal, N the points since (Montgomery, chapter 9). */
  readonly level: number;
}

/** The start of the shift behind the first signal, or null where there is none. */
export function shiftStart(points: readonly CusumPoint[], design: CusumDesign): ShiftStart | null {
  const signal = points.findIndex((point) => point.signal !== null);
  if (signal === -1) return null;
  const direction = points[signal]!.signal!;
  let start = signal;
  while (start > 0 && points[start - 1]![direction] > 0) start--;
  const excess = design.allowance + points[signal]![direction] / (signal - start + 1);
  return { direction, signal, start, level: design.target + (direction === 'high' ? excess : -excess) };
}
