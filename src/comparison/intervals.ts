import type { WithInterval } from '../result/comparison.ts';
import { findRoot } from '../statistics/root.ts';
import { leastFrom } from './profile.ts';

/** Likelihood-ratio statistic of two quantiles (J) together: 0 where both are those that fit best. */
export type Statistic = (first: number, second: number) => number;

/** What ties the second quantile to the first: their ratio or their difference. */
export interface Relation {
  /** Of the estimates. */
  readonly of: (first: number, second: number) => number;
  readonly second: (first: number, value: number) => number;
  readonly first: (second: number, value: number) => number;
}

export const RATIO: Relation = {
  of: (first, second) => second / first,
  second: (first, ratio) => first * ratio,
  first: (second, ratio) => second / ratio,
};

export const DIFFERENCE: Relation = {
  of: (first, second) => second - first,
  second: (first, difference) => first + difference,
  first: (second, difference) => second - difference,
};

/** The statistic of a ratio or difference: the quantiles that go with it and fit best are found between two extremes. */
export function profileOf(statistic: Statistic, best: readonly [number, number], relation: Relation) {
  const [first, second] = best;
  return (value: number): number => {
    const other = relation.first(second, value);
    // Both ends and half their distance beyond, at least a thousandth: where a common spread pulls the best pair farther,
    // the valley is followed.
    const room = 0.5 * Math.abs(other - first) + 0.001 * first;
    const low = Math.min(first, other) - room;
    const high = Math.max(first, other) + room;
    const along = (at: number) =>
      at > 0 && relation.second(at, value) > 0 ? statistic(at, relation.second(at, value)) : Infinity;
    return Math.max(0, leastFrom(along, low, high));
  };
}

/**
 * All values of a ratio or difference whose statistic is at most the critical value. An end that is not met within
 * twenty widths of the median is unbounded.
 */
export function likelihoodInterval(
  statistic: Statistic,
  best: readonly [number, number],
  relation: Relation,
  critical: number,
): WithInterval {
  const value = relation.of(...best);
  const profile = profileOf(statistic, best, relation);
  const end = (side: -1 | 1): number | null => {
    let inside = value;
    for (let k = 0, width = 0.01 * relationScale(relation, best); k < 12; k++, width *= 2) {
      const outside = value + side * width;
      if (relation === RATIO && outside <= 0) return null;
      if (relation === DIFFERENCE && best[1] + side * width <= -best[0] * 20) return null;
      const excess = (at: number) => profile(at) - critical;
      if (excess(outside) > 0) return findRoot(excess, inside, outside, { tolerance: 1e-9 * width });
      inside = outside;
    }
    return null;
  };
  return { value, lower: end(-1), upper: end(1), why: null };
}

function relationScale(relation: Relation, [first, second]: readonly [number, number]): number {
  return relation === RATIO ? second / first : first;
}
