import { analyseOneWay } from '../analysis-of-variance/one-way.ts';
import { studentLaw } from '../laws/student.ts';
import { studentizedRangeLaw } from '../laws/studentized-range.ts';
import { mean } from '../summary/moments.ts';
import { adjust } from './adjust.ts';

/** Two groups against each other among several. */
export interface PairComparison {
  /** Places of the groups, from 0; the difference is first minus second. */
  readonly first: number;
  readonly second: number;
  readonly difference: number;
  readonly standardError: number;
  /** Student's p by the common spread, and adjusted for the number of pairs. */
  readonly p: number;
  readonly bonferroni: number;
  readonly holm: number;
  readonly tukey: number;
  /** Tukey's simultaneous limits (Kramer's for groups of unequal size). */
  readonly lower: number;
  readonly upper: number;
}

/**
 * All pairs of groups with one common spread: Tukey's honest differences (1953; Kramer 1956) with Bonferroni's and Holm's p beside
 * them.
 *
 * @param level simultaneous, of all intervals together
 */
export function compareAllPairs(groups: readonly (readonly number[])[], level: number): PairComparison[] {
  const { within } = analyseOneWay(groups);
  if (!(within.meanSquare > 0)) throw new RangeError('nothing varies within the groups; no test is possible');
  const student = studentLaw(within.degrees);
  const range = studentizedRangeLaw(groups.length, within.degrees);
  const critical = range.quantile(level);
  const means = groups.map(mean);
  const pairs = groups.flatMap((_, i) => groups.slice(i + 1).map((_, k) => [i, i + 1 + k] as const));
  const raw = pairs.map(([first, second]) => {
    const difference = means[first]! - means[second]!;
    const error = Math.sqrt(within.meanSquare * (1 / groups[first]!.length + 1 / groups[second]!.length));
    // The studentized range is of single means, whose error is that of a difference over √2.
    const q = (Math.SQRT2 * Math.abs(difference)) / error;
    const half = (critical * error) / Math.SQRT2;
    return {
      first,
      second,
      difference,
      standardError: error,
      p: 2 * student.sf(Math.abs(difference) / error),
      tukey: range.sf(q),
      lower: difference - half,
      upper: difference + half,
    };
  });
  const values = raw.map((pair) => pair.p);
  const bonferroni = adjust(values, 'bonferroni');
  const holm = adjust(values, 'holm');
  return raw.map((pair, i) => ({ ...pair, bonferroni: bonferroni[i]!, holm: holm[i]! }));
}
