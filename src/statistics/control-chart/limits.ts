/** Centre line and limits of a chart, in the unit of what is drawn. */
export interface ChartLimits {
  readonly centre: number;
  readonly lower: number;
  readonly upper: number;
}

/** The places, counted from 0, of values strictly outside their limits. */
export function outside(values: readonly number[], { lower, upper }: ChartLimits): number[] {
  return values.flatMap((value, i) => (value < lower || value > upper ? [i] : []));
}

/** A base period needs this many points before limits from it mean much (common practice, no source). */
export const LEAST_BASE = 10;

/** Throws a RangeError for a base period that is too short or contains what is no number. */
export function checkBase(count: number, values: readonly number[]): void {
  if (count < LEAST_BASE)
    throw new RangeError(`a base period needs at least ${LEAST_BASE} points, found ${count}`);
  if (!values.every(Number.isFinite)) throw new RangeError('a base period must be of finite numbers');
}
