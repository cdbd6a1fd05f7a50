import { type GrubbsTest, grubbsTest } from '../outlier/grubbs.ts';
import { type CochranTest, cochranTest } from '../outlier/largest-variance.ts';
import { mean, variance } from '../summary/moments.ts';

/** A test at the two levels of ISO 5725-2: beyond 5 % a straggler, to be explained; beyond 1 % an outlier. */
export interface Scrutiny<T> {
  readonly test: T;
  readonly criticalOnePercent: number;
  readonly finding: 'none' | 'straggler' | 'outlier';
}

/** What the tests say of the laboratories as they stand. */
export interface LaboratoryScrutiny {
  /** The laboratory with the largest scatter; null where no two have replicates that differ. */
  readonly scatter: Scrutiny<CochranTest> | null;
  /** The laboratory whose mean lies farthest out; null for fewer than three, or means all alike. */
  readonly mean: Scrutiny<GrubbsTest> | null;
}

/**
 * Cochran's test of the scatter and Grubbs' two-sided test of the means (ISO 5725-2:1994, 7.3). One pass: whoever leaves a laboratory
 * out, with a reason, asks again with the rest. Laboratories are told by their place, from 0.
 */
export function scrutiniseLaboratories(laboratories: readonly (readonly number[])[]): LaboratoryScrutiny {
  const replicated = laboratories.flatMap((results, i) => (results.length >= 2 ? [i] : []));
  const variances = replicated.map((i) => variance(laboratories[i]!));
  const means = laboratories.map(mean);
  const n = commonest(replicated.map((i) => laboratories[i]!.length));
  const ofVariances = (alpha: number) => {
    const test = cochranTest(variances, n!, alpha);
    return { ...test, index: replicated[test.index]! };
  };
  return {
    scatter:
      n === null || variances.length < 2 || !variances.some((one) => one > 0) ? null : judge(ofVariances),
    mean:
      means.length < 3 || means.every((one) => one === means[0])
        ? null
        : judge((alpha) => grubbsTest(means, alpha)),
  };
}

function judge<T extends { readonly outlier: boolean; readonly critical: number }>(
  at: (significance: number) => T,
): Scrutiny<T> {
  const test = at(0.05);
  const strict = at(0.01);
  return {
    test,
    criticalOnePercent: strict.critical,
    finding: strict.outlier ? 'outlier' : test.outlier ? 'straggler' : 'none',
  };
}

/** The most frequent number, the larger one of two as frequent. */
function commonest(counts: readonly number[]): number | null {
  const tally = new Map<number, number>();
  for (const count of counts) tally.set(count, (tally.get(count) ?? 0) + 1);
  const sorted = [...tally].sort((a, b) => b[1] - a[1] || b[0] - a[0]);
  return sorted[0]?.[0] ?? null;
}
