import { fisherLaw } from '../laws/fisher.ts';
import { compensatedSum, mean, sumOfSquares } from '../summary/moments.ts';

/** A line of an analysis of variance. */
export interface VarianceLine {
  readonly sumOfSquares: number;
  readonly degrees: number;
  readonly meanSquare: number;
}

/** A ratio of mean squares tested by Fisher's F. */
export interface FisherTest {
  readonly f: number;
  readonly above: number;
  readonly below: number;
  /** Probability of an F as large or larger where the groups do not differ. */
  readonly p: number;
}

/** One-way analysis of variance. */
export interface OneWay {
  readonly between: VarianceLine;
  readonly within: VarianceLine;
  /** Null where nothing varies within groups. */
  readonly test: FisherTest | null;
  /** Share of the sum of squares that lies between groups. */
  readonly rSquared: number;
  /** Square root of the mean square within. */
  readonly residualStandardDeviation: number;
}

/** A line of so many degrees of freedom. */
export function varianceLine(sumOfSquares: number, degrees: number): VarianceLine {
  return { sumOfSquares, degrees, meanSquare: sumOfSquares / degrees };
}

/** Tests one mean square against another. */
export function fisherTest(effect: VarianceLine, error: VarianceLine): FisherTest | null {
  if (!(error.meanSquare > 0)) return null;
  const f = effect.meanSquare / error.meanSquare;
  const p = fisherLaw(effect.degrees, error.degrees).sf(f);
  return { f, above: effect.degrees, below: error.degrees, p };
}

/**
 * One-way analysis of variance, the values taken from one of them, in two passes: leading digits that all share cost only what
 * they cost in the numbers as stored.
 *
 * @param groups at least two, none empty, with more values than groups; else a RangeError
 */
export function analyseOneWay(groups: readonly (readonly number[])[]): OneWay {
  const total = groups.reduce((n, group) => n + group.length, 0);
  if (groups.length < 2 || groups.some((group) => group.length === 0) || total <= groups.length)
    throw new RangeError('an analysis of variance needs two groups or more, with more values than groups');
  const origin = groups[0]![0]!;
  const shifted = groups.map((group) => group.map((value) => value - origin));
  const means = shifted.map(mean);
  const grand = compensatedSum(shifted.flat()) / total;
  const between = varianceLine(
    compensatedSum(means.map((one, i) => groups[i]!.length * (one - grand) ** 2)),
    groups.length - 1,
  );
  const within = varianceLine(compensatedSum(shifted.map(sumOfSquares)), total - groups.length);
  return {
    between,
    within,
    test: fisherTest(between, within),
    rSquared: between.sumOfSquares / (between.sumOfSquares + within.sumOfSquares),
    residualStandardDeviation: Math.sqrt(within.meanSquare),
  };
}
