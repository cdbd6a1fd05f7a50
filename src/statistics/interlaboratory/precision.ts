import { analyseOneWay } from '../analysis-of-variance/one-way.ts';
import { mean, variance } from '../summary/moments.ts';

/** Repeatability and reproducibility between laboratories. */
export interface InterlaboratoryPrecision {
  /** Mean of all results, laboratories weighing as they have results. */
  readonly mean: number;
  /** s_r: within a laboratory. */
  readonly repeatabilityDeviation: number;
  /** s_L²: between laboratories; may come out negative. */
  readonly betweenVariance: number;
  /** s_R = √(s_r² + s_L²), a negative s_L² taken as 0. */
  readonly reproducibilityDeviation: number;
  /** r = 2.8·s_r: two results of one laboratory differ by more in 5 % of cases. */
  readonly repeatabilityLimit: number;
  /** R = 2.8·s_R: the same for two laboratories. */
  readonly reproducibilityLimit: number;
  /** n̄̄, the number of results that stands for unequal ones. */
  readonly effectiveReplicates: number;
}

/**
 * Precision of a method at one level (ISO 5725-2:1994, 7.4): one-way analysis over laboratories, s_L² = (MS_L − s_r²)/n̄̄ with
 * n̄̄ = (N − Σn²/N)/(p − 1). Laboratories that Cochran's or Grubbs' test speaks against are for the caller to leave out, with
 * a reason.
 *
 * @param laboratories at least two, none empty, with a replicate somewhere; else a RangeError
 */
export function interlaboratoryPrecision(
  laboratories: readonly (readonly number[])[],
): InterlaboratoryPrecision {
  const { between, within } = analyseOneWay(laboratories);
  const counts = laboratories.map((results) => results.length);
  const total = counts.reduce((a, b) => a + b);
  const squares = counts.reduce((sum, n) => sum + n * n, 0);
  const effectiveReplicates = (total - squares / total) / (laboratories.length - 1);
  const betweenVariance = (between.meanSquare - within.meanSquare) / effectiveReplicates;
  const repeatabilityDeviation = Math.sqrt(within.meanSquare);
  const reproducibilityDeviation = Math.sqrt(within.meanSquare + Math.max(0, betweenVariance));
  return {
    mean: mean(laboratories.flat()),
    repeatabilityDeviation,
    betweenVariance,
    reproducibilityDeviation,
    repeatabilityLimit: 2.8 * repeatabilityDeviation,
    reproducibilityLimit: 2.8 * reproducibilityDeviation,
    effectiveReplicates,
  };
}

/** How a laboratory compares with the others (Mandel's h and k, ISO 5725-2, 7.3.1). */
export interface Consistency {
  /** (own mean − mean of the means)/standard deviation of the means */
  readonly h: number;
  /** Own standard deviation over the root mean square of all; null for a single result. */
  readonly k: number | null;
}

/** Mandel's statistics of each laboratory, in the order given. */
export function laboratoryConsistency(laboratories: readonly (readonly number[])[]): Consistency[] {
  const means = laboratories.map(mean);
  const centre = mean(means);
  const spread = Math.sqrt(variance(means));
  const variances = laboratories.map((results) => (results.length < 2 ? null : variance(results)));
  const pooled = mean(variances.filter((one) => one !== null));
  return means.map((own, i) => ({
    h: (own - centre) / spread,
    k: variances[i] === null ? null : Math.sqrt(variances[i]! / pooled),
  }));
}
