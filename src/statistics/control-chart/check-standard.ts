import { fisherLaw } from '../laws/fisher.ts';
import { studentLaw } from '../laws/student.ts';
import { mean, variance } from '../summary/moments.ts';
import { type ChartLimits, checkBase } from './limits.ts';

/** Limits for a check standard that is measured several times on each occasion. */
export interface CheckStandardLimits {
  readonly value: ChartLimits;
  /** Upper limit of the standard deviation within an occasion; there is no lower one. */
  readonly shortTerm: { readonly centre: number; readonly upper: number };
  /** Standard deviation from occasion to occasion, with n − 1 degrees of freedom. */
  readonly levelTwo: number;
  /** Pooled standard deviation within occasions. */
  readonly levelOne: number;
}

/**
 * Limits of a check standard (NIST/SEMATECH e-Handbook, 2.2.2 and 2.6.2): mean ± t·s over the occasions; within an occasion
 * s₁·√F of its degrees of freedom against those of all together.
 *
 * @param values mean of each occasion
 * @param shortTerm standard deviation within each occasion, each with `degrees` degrees of freedom
 * @param level two-sided for the values (0.95), one-sided for the standard deviations
 * @throws RangeError for fewer than 10 occasions or lists of unequal length
 */
export function checkStandardLimits(
  values: readonly number[],
  shortTerm: readonly number[],
  degrees: number,
  level: number,
): CheckStandardLimits {
  checkBase(values.length, [...values, ...shortTerm]);
  if (values.length !== shortTerm.length)
    throw new RangeError(`${values.length} values and ${shortTerm.length} standard deviations`);
  const centre = mean(values);
  const levelTwo = Math.sqrt(variance(values));
  const levelOne = Math.sqrt(mean(shortTerm.map((s) => s * s)));
  const half = studentLaw(values.length - 1).quantile(0.5 + 0.5 * level) * levelTwo;
  const ratio = fisherLaw(degrees, degrees * values.length).quantile(level);
  return {
    value: { centre, lower: centre - half, upper: centre + half },
    shortTerm: { centre: levelOne, upper: levelOne * Math.sqrt(ratio) },
    levelTwo,
    levelOne,
  };
}
