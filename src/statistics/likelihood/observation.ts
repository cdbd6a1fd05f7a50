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
/** As many observations are sorted sooner than counted. */
const FEW = 64;

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
  const distinct = observations.length > FEW ? tally(observations) : observations;
  const rows = onSharedLevels(distinct).sort(byEnds);
  const [lower, upper, count] = [room(rows), room(rows), room(rows)];
  let size = 0;
  let logJacobian = 0;
  let last: Observation | null = null;
  for (const row of rows) {
    const low = toScale(row.lower, scale);
    // From nothing to anything: says nothing.
    if (low === -Infinity && row.upper === Infinity) continue;
    if (row.lower === row.upper && scale === 'log') logJacobian -= row.count * low;
    if (last !== null && last.lower === row.lower && last.upper === row.upper) {
      count[size - 1]! += row.count;
      continue;
    }
    lower[size] = low;
    upper[size] = toScale(row.upper, scale);
    count[size++] = row.count;
    last = row;
  }
  const used = (ends: Float64Array) => (size === rows.length ? ends : ends.slice(0, size));
  return { scale, size, lower: used(lower), upper: used(upper), count: used(count), logJacobian };
}

function room(rows: readonly Observation[]): Float64Array {
  return new Float64Array(rows.length);
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

function byEnds(a: Observation, b: Observation): number {
  return compare(a.lower, b.lower) || compare(a.upper, b.upper);
}

/** Infinite ends are equal, though their difference is no number. */
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

/** The same observations, in an array of their own, with ends that are one level on paper made equal. */
function onSharedLevels(observations: readonly Observation[]): Observation[] {
  const ends = new Float64Array(2 * observations.length);
  let size = 0;
  for (const { lower, upper } of observations) {
    if (lower !== -Infinity) ends[size++] = lower;
    if (upper !== Infinity) ends[size++] = upper;
  }
  const representative = mergeLevels(ends.subarray(0, size).sort());
  if (representative === null) return observations.slice();
  const level = (x: number) => representative.get(x) ?? x;
  return observations.map(({ lower, upper, count }) => ({
    lower: level(lower),
    upper: level(upper),
    count,
  }));
}

/** For each level that is the same on paper as one below it, the lowest of them; null where there is none, as usually. */
function mergeLevels(sorted: Float64Array): Map<number, number> | null {
  let representative: Map<number, number> | null = null;
  let current = Number.NaN;
  for (const x of sorted) {
    if (!(x - current <= SAME_LEVEL * Math.max(Math.abs(x), Math.abs(current)))) current = x;
    else if (x !== current) {
      representative ??= new Map();
      representative.set(x, current);
    }
  }
  return representative;
}
