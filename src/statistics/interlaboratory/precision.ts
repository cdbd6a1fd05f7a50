import { type ComponentInterval, componentInterval } from '../analysis-of-variance/component-interval.ts';
import { analyseOneWay } from '../analysis-of-variance/one-way.ts';
import { mean } from '../summary/moments.ts';

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
 * n̄̄ = (N − Σn²/N)/(p − 1). Laboratories that Cochran's test or Grubbs' speaks against are for the caller to leave out, with
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

/**
 * Intervals of s_r² and s_R²: exact chi-squared for the first, modified large-sample for the second, which with few laboratories is
 * wide. With unequal numbers of results approximate.
 *
 * @param level two-sided
 */
export function precisionIntervals(
  laboratories: readonly (readonly number[])[],
  level: number,
): { readonly repeatability: ComponentInterval; readonly reproducibility: ComponentInterval } {
  const { between, within } = analyseOneWay(laboratories);
  const { effectiveReplicates: n } = interlaboratoryPrecision(laboratories);
  return {
    repeatability: componentInterval([{ coefficient: 1, line: within }], level),
    reproducibility: componentInterval(
      [
        { coefficient: 1 / n, line: between },
        { coefficient: 1 - 1 / n, line: within },
      ],
      level,
    ),
  };
}
