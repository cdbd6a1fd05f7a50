import type { ComparedPair, ComparedSample, TradeOff } from '../result/comparison.ts';

/**
 * Energy or life against tyre mass, lightest first. A sample is dominated where another is no heavier and no weaker by its
 * median, and better in one of the two. Empty where fewer than two have both numbers.
 */
export function tradeOffs(
  samples: readonly ComparedSample[],
  medians: readonly (number | null)[],
  pairs: readonly ComparedPair[],
): TradeOff[] {
  const points = samples.flatMap(({ mass }, sample) => {
    const median = medians[sample] ?? null;
    return mass === null || median === null ? [] : [{ sample, mass, median }];
  });
  if (points.length < 2) return [];
  const isApart = (a: number, b: number) =>
    pairs.some(
      ({ first, second, toldApart }) =>
        toldApart === true && ((first === a && second === b) || (first === b && second === a)),
    );
  return points
    .map((point): TradeOff => {
      const better = points.filter(
        (other) =>
          other.mass <= point.mass &&
          other.median >= point.median &&
          (other.mass < point.mass || other.median > point.median),
      );
      return {
        ...point,
        dominatedBy: better.map(({ sample }) => sample),
        isToldApart: better.some(({ sample }) => isApart(sample, point.sample)),
      };
    })
    .sort((a, b) => a.mass - b.mass || b.median - a.median);
}
