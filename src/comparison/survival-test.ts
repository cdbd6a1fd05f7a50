import type { LogRankResult } from '../result/comparison.ts';
import { logRankTest } from '../statistics/life/log-rank.ts';
import type { Look } from './side.ts';

/**
 * The log-rank test of two sets of lives: no law is assumed. A failure found at an inspection counts at the distance at
 * which it was found, a suspension at that at which it was last seen whole.
 */
export function survivalTest(first: readonly Look[], second: readonly Look[]): LogRankResult {
  const lives = [first, second].map((looks) =>
    looks.map(({ lower, upper }) => {
      const failed = Number.isFinite(upper);
      return { time: failed ? upper : lower, failed };
    }),
  );
  if (!lives.flat().some(({ failed }) => failed)) {
    return { statistic: null, p: null, why: 'no tyre failed: there is nothing to test' };
  }
  try {
    const { statistic, p } = logRankTest(lives);
    return { statistic, p, why: null };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return { statistic: null, p: null, why: error.message };
  }
}
