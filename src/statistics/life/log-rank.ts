import { chiSquaredLaw } from '../laws/gamma.ts';
import { solveLinear } from '../special/linear-system.ts';
import type { Life } from '../turnbull/kaplan-meier.ts';

/** A comparison of survival curves. */
export interface LogRank {
  /** Failures seen and expected by group, weighted alike. */
  readonly observed: readonly number[];
  readonly expected: readonly number[];
  /** Covariances of observed − expected, a row for each group. */
  readonly covariance: readonly (readonly number[])[];
  readonly statistic: number;
  readonly degrees: number;
  readonly p: number;
}

/**
 * The log-rank test of equal survival in two groups or more (Mantel 1966; hypergeometric variance), and its weighted kin
 * (Harrington & Fleming 1982): weights S(t⁻)^rho by the pooled Kaplan–Meier curve; rho 1 is Peto and Peto's, which heeds early
 * failures more.
 *
 * @throws RangeError for fewer than two groups or without a failure while two groups were still on test
 */
export function logRankTest(groups: readonly (readonly Life[])[], rho = 0): LogRank {
  const size = groups.length;
  if (size < 2) throw new RangeError('a comparison needs two groups');
  const times = [
    ...new Set(
      groups
        .flat()
        .filter((life) => life.failed)
        .map((life) => life.time),
    ),
  ].sort((a, b) => a - b);
  const observed = new Array<number>(size).fill(0);
  const expected = new Array<number>(size).fill(0);
  const covariance = groups.map(() => new Array<number>(size).fill(0));
  let survival = 1;
  for (const time of times) {
    const atRisk = groups.map((lives) => lives.filter((life) => life.time >= time).length);
    const failed = groups.map((lives) => lives.filter((life) => life.failed && life.time === time).length);
    const n = atRisk.reduce((a, b) => a + b);
    const d = failed.reduce((a, b) => a + b);
    const weight = survival ** rho;
    for (let i = 0; i < size; i++) {
      const share = atRisk[i]! / n;
      observed[i]! += weight * failed[i]!;
      expected[i]! += weight * d * share;
      // The last one at risk has no variance.
      if (n < 2) continue;
      const factor = (weight * weight * d * (n - d)) / (n - 1);
      for (let j = 0; j < size; j++)
        covariance[i]![j]! += factor * share * ((i === j ? 1 : 0) - atRisk[j]! / n);
    }
    survival *= 1 - d / n;
  }
  // One group follows from the others.
  const kept = size - 1;
  const matrix = Float64Array.from(
    { length: kept * kept },
    (_, k) => covariance[Math.floor(k / kept)]![k % kept]!,
  );
  const difference = Float64Array.from({ length: kept }, (_, i) => observed[i]! - expected[i]!);
  const solved = solveLinear(matrix, Float64Array.from(difference));
  const statistic = solved.reduce((sum, value, i) => sum + value * difference[i]!, 0);
  return { observed, expected, covariance, statistic, degrees: kept, p: chiSquaredLaw(kept).sf(statistic) };
}
