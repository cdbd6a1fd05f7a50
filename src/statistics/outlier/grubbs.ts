import { studentLaw } from '../laws/student.ts';
import { mean, variance } from '../summary/moments.ts';

/** What Grubbs' test says of the value that lies farthest out. */
export interface GrubbsTest {
  /** Its place, from 0. */
  readonly index: number;
  /** |value − mean|/s */
  readonly statistic: number;
  readonly critical: number;
  readonly outlier: boolean;
}

/**
 * The critical value of Grubbs' statistic for n values (Grubbs & Beck 1972):
 * (n − 1)/√n·√(t²/(n − 2 + t²)), t at significance/n, for two sides at significance/(2n).
 *
 * @param sides 1 where only the largest (or only the smallest) value is in question, 2 for either; ISO 5725-2 takes 2
 */
export function grubbsCritical(n: number, significance: number, sides: 1 | 2): number {
  if (!(n >= 3)) throw new RangeError(`${n} values are too few for an outlier; 3 are needed`);
  const t = studentLaw(n - 2).quantileOfSf(significance / (sides * n));
  return ((n - 1) / Math.sqrt(n)) * Math.sqrt((t * t) / (n - 2 + t * t));
}

/**
 * Grubbs' test for one outlier among normal values; two on one side mask one another. A test that finds one is a reason to
 * look for a cause, never to leave a value out without one.
 *
 * @param which side is in question; `either` is the two-sided test
 */
export function grubbsTest(
  values: readonly number[],
  significance: number,
  which: 'largest' | 'smallest' | 'either' = 'either',
): GrubbsTest {
  const critical = grubbsCritical(values.length, significance, which === 'either' ? 2 : 1);
  const centre = mean(values);
  const spread = Math.sqrt(variance(values));
  if (!(spread > 0)) throw new RangeError('the values do not differ; none is an outlier');
  const out = values.map((value) => {
    const z = (value - centre) / spread;
    return which === 'largest' ? z : which === 'smallest' ? -z : Math.abs(z);
  });
  const statistic = Math.max(...out);
  return { index: out.indexOf(statistic), statistic, critical, outlier: statistic > critical };
}
