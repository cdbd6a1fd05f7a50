import { normalQuantile } from '../special/normal-quantile.ts';

/**
 * The value that a likelihood-ratio statistic must stay below for a parameter to be in an interval: the quantile of
 * chi-squared with one degree of freedom, which is the square of a normal quantile.
 *
 * @param level confidence, above 0 and below 1. Two-sided: chi-squared at `level` (3.841 at 0.95). One-sided: at
 *   2·level − 1, since the signed root is normal (2.706 at 0.95); the level must then be above one half
 * @throws RangeError outside these
 */
export function likelihoodRatioCritical(level: number, sides: 1 | 2): number {
  const z = normalCritical(level, sides);
  return z * z;
}

/** The normal quantile of a Wald interval: at (1 + level)/2 for two sides, at `level` for one. */
export function normalCritical(level: number, sides: 1 | 2): number {
  if (!(level > (sides === 1 ? 0.5 : 0) && level < 1))
    throw new RangeError(`confidence ${level} (${sides}-sided) is outside its range`);
  return normalQuantile(sides === 1 ? level : 0.5 + 0.5 * level);
}
