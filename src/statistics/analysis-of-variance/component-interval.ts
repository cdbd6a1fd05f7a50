import { fisherLaw } from '../laws/fisher.ts';
import { chiSquaredLaw } from '../laws/gamma.ts';
import type { VarianceLine } from './one-way.ts';

/** A mean square with its coefficient in a variance component, such as +1/n of MS_between and −1/n of MS_within. */
export interface Term {
  readonly coefficient: number;
  readonly line: VarianceLine;
}

/** A variance with its interval; both may be negative where mean squares are subtracted. */
export interface ComponentInterval {
  readonly value: number;
  readonly lower: number;
  readonly upper: number;
}

/**
 * Interval of a sum and difference of independent mean squares, Σ cᵢ·E(MSᵢ), by the modified large-sample method (Graybill & Wang
 * 1980, JASA 75, 869–873, for sums; Ting, Burdick, Graybill, Jeyaratnam & Lu 1990, J. Stat. Comp. Sim. 35, 135–143, with
 * differences; Burdick & Graybill 1992). For a single mean square it is the exact chi-squared interval.
 *
 * @param level two-sided
 */
export function componentInterval(terms: readonly Term[], level: number): ComponentInterval {
  const tail = 0.5 * (1 - level);
  const value = terms.reduce((sum, { coefficient, line }) => sum + coefficient * line.meanSquare, 0);
  const plus = terms.filter((term) => term.coefficient > 0);
  const minus = terms.filter((term) => term.coefficient < 0);
  return {
    value,
    lower: value - Math.sqrt(Math.max(0, spread(plus, minus, tail))),
    upper: value + Math.sqrt(Math.max(0, spread(minus, plus, tail))),
  };
}

/** What may be added on the side where `over` is overestimated and `under` underestimated. */
function spread(over: readonly Term[], under: readonly Term[], tail: number): number {
  const size = ({ coefficient, line }: Term) => Math.abs(coefficient) * line.meanSquare;
  // 1 − 1/F with F = χ²/ν in its upper tail, and 1/F − 1 in its lower one.
  const high = ({ line: { degrees } }: Term) => 1 - degrees / chiSquaredLaw(degrees).quantileOfSf(tail);
  const low = ({ line: { degrees } }: Term) => degrees / chiSquaredLaw(degrees).quantile(tail) - 1;
  let sum = 0;
  for (const a of over) {
    sum += (high(a) * size(a)) ** 2;
    for (const b of under) {
      const f = fisherLaw(a.line.degrees, b.line.degrees).quantileOfSf(tail);
      const cross = ((f - 1) ** 2 - (high(a) * f) ** 2 - low(b) ** 2) / f;
      sum += cross * size(a) * size(b);
    }
  }
  for (const b of under) sum += (low(b) * size(b)) ** 2;
  return sum;
}
