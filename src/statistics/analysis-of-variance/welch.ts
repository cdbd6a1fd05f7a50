import { fisherLaw } from '../laws/fisher.ts';
import { mean, variance } from '../summary/moments.ts';
import type { FisherTest } from './one-way.ts';

/**
 * One-way analysis of variance without equal spreads (Welch 1951, Biometrika 38, 330–336): groups weigh n/s², the degrees of
 * freedom below are not whole.
 *
 * @param groups at least two of two or more values each, none of them all alike; else a RangeError
 */
export function analyseUnequalSpreads(groups: readonly (readonly number[])[]): FisherTest {
  const count = groups.length;
  const spreads = groups.map(variance);
  if (count < 2 || spreads.some((one) => !(one > 0)))
    throw new RangeError('needs at least two groups whose values differ among themselves');
  const weights = groups.map((group, i) => group.length / spreads[i]!);
  const total = weights.reduce((a, b) => a + b);
  const means = groups.map(mean);
  const centre = means.reduce((sum, one, i) => sum + weights[i]! * one, 0) / total;
  const loss = groups.reduce((sum, group, i) => sum + (1 - weights[i]! / total) ** 2 / (group.length - 1), 0);
  const between = means.reduce((sum, one, i) => sum + weights[i]! * (one - centre) ** 2, 0) / (count - 1);
  const f = between / (1 + (2 * (count - 2) * loss) / (count * count - 1));
  const below = (count * count - 1) / (3 * loss);
  return { f, above: count - 1, below, p: fisherLaw(count - 1, below).sf(f) };
}
