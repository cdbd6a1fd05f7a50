/**
 * What one outcome says of a strength or a life x: it lies in (lower, upper].
 *
 * A failure at x is (−∞, x], a survival (x, ∞), a rising-height specimen (last survived, failed]; equal ends are a value
 * read exactly. For laws of positive x a lower end of 0 means the same as −∞.
 */
export interface Observation {
  readonly lower: number;
  readonly upper: number;
  /** How many such observations; any positive weight. */
  readonly count: number;
}

/**
 * Observations as the likelihood reads them: ends on the fitted scale (x or ln x), equal ones merged, sorted.
 *
 * The arrays are as long as `size` or longer, so that a simulation can keep one sample and refill it.
 */
export interface Sample {
  readonly scale: 'identity' | 'log';
  size: number;
  /** −∞ where open below. */
  readonly lower: Float64Array;
  /** ∞ where open above. */
  readonly upper: Float64Array;
  readonly count: Float64Array;
  /** Σ count·ln(dy/dx) over the exact values: 0 on the identity scale, −Σ ln x on the log scale. */
  logJacobian: number;
}

/** Two levels nearer than this, relative to the larger, are the same level on paper. */
const SAME_LEVEL = 1e-9;

/**
 * Merges equal observations and takes their ends to the fitted scale. Levels that agree to 1e-9 of their size become one
 * (the lowest of them), so that 0.1 + 0.2 and 0.3 are no two levels; this happens here and nowhere else.
 *
 * @param scale `log` for laws of ln x
 * @throws RangeError for NaN ends, lower above upper, a count that is not positive, or, on the log scale, an upper end
 *   that is not positive
 */
export function gatherObservations(observations: readonly Observation[], scale: 'identity' | 'log'): Sample {
  for (const observation of observations) check(observation, scale);
  // A log of 100,000 drops has some ten levels: what follows works on those.
  const distinct = tally(observations);
  const level = mergeLevels(distinct);
  const rows = distinct
    .map(({ lower, upper, count }) => ({ lower: level(lower), upper: level(upper), count }))
    .filter(({ lower, upper }) => toScale(lower, scale) !== -Infinity || upper !== Infinity)
    .sort((a, b) => compare(a.lower, b.lower) || compare(a.upper, b.upper));
  const merged: { lower: number; upper: number; count: number }[] = [];
  for (const row of rows) {
    const last = merged.at(-1);
    if (last && last.lower === row.lower && last.upper === row.upper) last.count += row.count;
    else merged.push(row);
  }
  const exact = merged.filter((row) => row.lower === row.upper);
  return {
    scale,
    size: merged.length,
    lower: Float64Array.from(merged, (row) => toScale(row.lower, scale)),
    upper: Float64Array.from(merged, (row) => toScale(row.upper, scale)),
    count: Float64Array.from(merged, (row) => row.count),
    logJacobian: scale === 'log' ? exact.reduce((sum, row) => sum - row.count * Math.log(row.lower), 0) : 0,
  };
}

/** x on the fitted scale; at or below 0 it is −∞ on the log scale. */
export function toScale(x: number, scale: 'identity' | 'log'): number {
  if (scale === 'identity') return x;
  return x > 0 ? Math.log(x) : -Infinity;
}

/** A value on the fitted scale taken back to x. */
export function fromScale(y: number, scale: 'identity' | 'log'): number {
  return scale === 'identity' ? y : Math.exp(y);
}

/**
 * A tested level taken back to x. exp(ln x) may differ from x in the last digit; fourteen digits give 3 for 3 again.
 */
export function levelFromScale(y: number, scale: 'identity' | 'log'): number {
  return scale === 'identity' ? y : Number(Math.exp(y).toPrecision(14));
}

/** One observation for each pair of ends, with the count of all that have them. */
function tally(observations: readonly Observation[]): Observation[] {
  const counts = new Map<number, Map<number, number>>();
  for (const { lower, upper, count } of observations) {
    const above = counts.get(lower);
    if (above === undefined) counts.set(lower, new Map([[upper, count]]));
    else above.set(upper, (above.get(upper) ?? 0) + count);
  }
  return [...counts].flatMap(([lower, above]) =>
    [...above].map(([upper, count]) => ({ lower, upper, count })),
  );
}

function compare(a: number, b: number): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function check({ lower, upper, count }: Observation, scale: 'identity' | 'log'): void {
  if (!(lower <= upper) || lower === Infinity || upper === -Infinity)
    throw new RangeError(`observation (${lower}, ${upper}]: the lower end must not lie above the upper`);
  if (!(count > 0) || count === Infinity)
    throw new RangeError(`observation (${lower}, ${upper}]: count ${count} is not a positive number`);
  if (scale === 'log' && !(upper > 0))
    throw new RangeError(
      `observation (${lower}, ${upper}]: a law of positive values needs an upper end above 0`,
    );
}

function mergeLevels(observations: readonly Observation[]): (x: number) => number {
  const ends = observations.flatMap(({ lower, upper }) => [lower, upper]).filter(Number.isFinite);
  const representative = new Map<number, number>();
  let current = Number.NaN;
  for (const x of ends.sort(compare)) {
    if (!(x - current <= SAME_LEVEL * Math.max(Math.abs(x), Math.abs(current)))) current = x;
    representative.set(x, current);
  }
  return (x) => representative.get(x) ?? x;
}
