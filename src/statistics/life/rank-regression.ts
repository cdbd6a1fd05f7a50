import { fitLine } from '../straight-line/fit.ts';
import type { Life } from '../turnbull/kaplan-meier.ts';
import { adjustedRanks } from './adjusted-ranks.ts';
import { benardRank, medianRank } from './median-ranks.ts';

/** A Weibull law by a line on probability paper. */
export interface RankRegression {
  readonly shape: number;
  readonly characteristicLife: number;
  /** Squared correlation of the points. */
  readonly rSquared: number;
}

/**
 * Rank regression: ln(−ln(1 − median rank)) against ln time, by adjusted ranks. It differs from maximum likelihood on few failures,
 * and the two directions from one another; it has no sound interval. For comparison with other reports only.
 *
 * @param direction which is regressed on which: `time-on-rank` (X on Y) or `rank-on-time` (Y on X)
 * @param ranks Benard's approximation or the exact median ranks
 * @throws RangeError for fewer than two failures at different times
 */
export function rankRegression(
  lives: readonly Life[],
  direction: 'time-on-rank' | 'rank-on-time',
  ranks: 'benard' | 'exact' = 'benard',
): RankRegression {
  const failures = adjustedRanks(lives);
  if (new Set(failures.map((one) => one.time)).size < 2)
    throw new RangeError('rank regression needs failures at two times or more');
  const rankOf = ranks === 'benard' ? benardRank : medianRank;
  const x = failures.map((one) => Math.log(one.time));
  const y = failures.map((one) => Math.log(-Math.log1p(-rankOf(one.rank, lives.length))));
  if (direction === 'rank-on-time') {
    const { intercept, slope, rSquared } = fitLine(x, y);
    return { shape: slope, characteristicLife: Math.exp(-intercept / slope), rSquared };
  }
  const { intercept, slope, rSquared } = fitLine(y, x);
  return { shape: 1 / slope, characteristicLife: Math.exp(intercept), rSquared };
}
