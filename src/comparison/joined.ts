import type { NonInferiority, PercentileDifference, WithInterval } from '../result/comparison.ts';
import {
  type BoundedQuantile,
  differenceOfQuantiles,
  ratioOfQuantiles,
} from '../statistics/calibration/contrast.ts';
import { SHARES } from './pair.ts';
import type { LimitsOf } from './side.ts';

type Scale = 'identity' | 'log';

/** Ratio and difference of medians and low percentage points from the limits that each side has by itself. */
export function joinedDifferences(
  first: LimitsOf,
  second: LimitsOf,
  scale: Scale,
  confidence: number,
  interval: 'calibrated' | 'specimen-effect',
): PercentileDifference[] {
  return SHARES.flatMap((probability): PercentileDifference[] => {
    const [a, b] = [first(probability, confidence, 2), second(probability, confidence, 2)];
    if (a === null || b === null) return [];
    const values = [bestOf(a), bestOf(b)] as const;
    const head = { probability, spreads: 'separate', interval, values, p: null } as const;
    const [x, y] = values;
    const why =
      x === null || y === null ? 'one side has no single best value; its limits alone are joined' : null;
    const isPositive = a.best > 0 && b.best > 0;
    const difference = {
      ...differenceOfQuantiles(a, b),
      value: x === null || y === null ? null : y - x,
      why,
    };
    if (!isPositive && why === null) {
      const none = { value: null, lower: null, upper: null };
      return [
        {
          ...head,
          difference,
          ratio: { ...none, why: 'the law puts this point at or below 0: no ratio can be told' },
        },
      ];
    }
    return [{ ...head, difference, ratio: joinedRatio(a, b, scale) }];
  });
}

/** Second over first, with limits. */
export function joinedRatio(first: BoundedQuantile, second: BoundedQuantile, scale: Scale): WithInterval {
  const [x, y] = [bestOf(first), bestOf(second)];
  const value = x === null || y === null || x <= 0 ? null : y / x;
  const why = value === null ? 'one side has no single best value; its limits alone are joined' : null;
  return { ...ratioOfQuantiles(first, second, scale), value, why };
}

function bestOf({ best }: BoundedQuantile): number | null {
  return Number.isFinite(best) ? best : null;
}

/**
 * Whether no more than a margin is lost: the one-sided lower bound of the ratio is at or above 1 − margin; inferior where
 * the upper one is below it.
 */
export function judgeMargin(
  { value, lower, upper }: Omit<WithInterval, 'why'>,
  margin: number,
): NonInferiority {
  const least = 1 - margin;
  const verdict =
    lower !== null && lower >= least
      ? 'not-inferior'
      : upper !== null && upper < least
        ? 'inferior'
        : 'undecided';
  return { margin, ratio: value, lower, upper, verdict };
}
