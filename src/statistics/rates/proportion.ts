import { betaLaw } from '../laws/beta.ts';

/** Two ends of an interval. */
export interface Range {
  readonly lower: number;
  readonly upper: number;
}

/**
 * Exact limits of a share (Clopper & Pearson 1934): beta quantiles; 0 where nothing and 1 where everything came out.
 *
 * @param level two-sided, or one-sided where one end alone is read
 */
export function shareLimits(count: number, of: number, level: number, sides: 1 | 2 = 2): Range {
  if (!(Number.isInteger(count) && Number.isInteger(of) && count >= 0 && count <= of && of > 0))
    throw new RangeError(`${count} of ${of} is no share`);
  const tail = tailOf(level, sides);
  return {
    lower: count === 0 ? 0 : betaLaw(count, of - count + 1).quantile(tail),
    upper: count === of ? 1 : betaLaw(count + 1, of - count).quantileOfSf(tail),
  };
}

/** The probability left out beyond an end. Throws a RangeError for a level outside (0, 1). */
export function tailOf(level: number, sides: 1 | 2): number {
  if (!(level > 0 && level < 1)) throw new RangeError(`level ${level} is not between 0 and 1`);
  return (1 - level) / sides;
}
