import { chiSquaredLaw } from '../laws/gamma.ts';
import { type Count, checkExposure } from './poisson-rate.ts';

/** Whether counts scatter more than chance alone would have them. */
export interface Dispersion {
  /** Σ (events − expected)²/expected at one common rate (Pearson). */
  readonly statistic: number;
  readonly degrees: number;
  /** Statistic over degrees: about 1 for a Poisson count, more where riders or routes differ. */
  readonly ratio: number;
  /** Probability of so much scatter by chance; by chi-squared, rough where few events are expected in a group. */
  readonly p: number;
  /** The smallest number of events expected in a group: below about 5 the p is rough, by Cochran (1954), common practice. */
  readonly leastExpected: number;
}

/**
 * The index of dispersion of counts over groups (riders, routes, months). Where the ratio is well above 1, intervals of a rate are
 * to be widened by its root, or taken over the groups.
 *
 * @throws RangeError for fewer than two groups, no events, or an exposure that is not above 0
 */
export function overDispersion(groups: readonly Count[]): Dispersion {
  for (const { exposure } of groups) checkExposure(exposure);
  const events = groups.reduce((sum, group) => sum + group.events, 0);
  const exposure = groups.reduce((sum, group) => sum + group.exposure, 0);
  if (groups.length < 2 || events === 0) throw new RangeError('dispersion needs two groups and an event');
  const expected = groups.map((group) => (events * group.exposure) / exposure);
  const statistic = groups.reduce(
    (sum, group, i) => sum + (group.events - expected[i]!) ** 2 / expected[i]!,
    0,
  );
  const degrees = groups.length - 1;
  return {
    statistic,
    degrees,
    ratio: statistic / degrees,
    p: chiSquaredLaw(degrees).sf(statistic),
    leastExpected: Math.min(...expected),
  };
}
