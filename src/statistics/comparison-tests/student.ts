import { studentLaw } from '../laws/student.ts';
import { mean, variance } from '../summary/moments.ts';

/** A difference of means with Student's test of no difference. */
export interface MeanDifference {
  /** First minus second. */
  readonly difference: number;
  readonly standardError: number;
  readonly t: number;
  readonly degrees: number;
  /** Two-sided. */
  readonly p: number;
  readonly lower: number;
  readonly upper: number;
}

/** Welch's comparison of two means without equal spreads (1938, 1947), degrees of freedom by Satterthwaite. */
export function welchTest(
  first: readonly number[],
  second: readonly number[],
  level: number,
): MeanDifference {
  const [a, b] = [variance(first) / first.length, variance(second) / second.length];
  const degrees = (a + b) ** 2 / (a ** 2 / (first.length - 1) + b ** 2 / (second.length - 1));
  return concluded(mean(first) - mean(second), Math.sqrt(a + b), degrees, level);
}

/** Student's comparison of two means with one spread. */
export function pooledTest(
  first: readonly number[],
  second: readonly number[],
  level: number,
): MeanDifference {
  const degrees = first.length + second.length - 2;
  const squares = variance(first) * (first.length - 1) + variance(second) * (second.length - 1);
  const error = Math.sqrt((squares / degrees) * (1 / first.length + 1 / second.length));
  return concluded(mean(first) - mean(second), error, degrees, level);
}

/** The comparison of pairs, by their differences: what the two of a pair share drops out. */
export function pairedTest(
  first: readonly number[],
  second: readonly number[],
  level: number,
): MeanDifference {
  if (first.length !== second.length)
    throw new RangeError(`${first.length} values against ${second.length} make no pairs`);
  const differences = first.map((value, i) => value - second[i]!);
  const error = Math.sqrt(variance(differences) / differences.length);
  return concluded(mean(differences), error, differences.length - 1, level);
}

function concluded(
  difference: number,
  standardError: number,
  degrees: number,
  level: number,
): MeanDifference {
  if (!(standardError > 0)) throw new RangeError('the values do not vary; no test is possible');
  const law = studentLaw(degrees);
  const t = difference / standardError;
  const half = law.quantileOfSf(0.5 * (1 - level)) * standardError;
  return {
    difference,
    standardError,
    t,
    degrees,
    p: 2 * law.sf(Math.abs(t)),
    lower: difference - half,
    upper: difference + half,
  };
}
