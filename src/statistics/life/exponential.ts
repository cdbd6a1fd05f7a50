import { chiSquaredLaw } from '../laws/gamma.ts';
import { tailOf } from '../rates/proportion.ts';
import type { Life } from '../turnbull/kaplan-meier.ts';

/**
 * Mean life under a constant hazard: total time over failures, with chi-squared limits 2T/χ². Exact where the test stops at a
 * failure; where it stops at a time the lower limit takes two degrees more (Nelson 1982, chapter 8; common practice). Without
 * failures only the lower limit is there.
 *
 * @param stopped at the last `failure` or at a `time` set beforehand
 */
export function exponentialLife(
  lives: readonly Life[],
  level: number,
  sides: 1 | 2 = 2,
  stopped: 'failure' | 'time' = 'time',
): {
  readonly mean: number | null;
  readonly failures: number;
  readonly lower: number;
  readonly upper: number | null;
} {
  const total = lives.reduce((sum, life) => sum + life.time, 0);
  const failures = lives.filter((life) => life.failed).length;
  if (!(total > 0)) throw new RangeError('no time on test');
  const tail = tailOf(level, sides);
  const more = stopped === 'time' ? 2 : 0;
  if (failures === 0 && more === 0) throw new RangeError('a test that stops at a failure has one');
  return {
    mean: failures === 0 ? null : total / failures,
    failures,
    lower: (2 * total) / chiSquaredLaw(2 * failures + more).quantileOfSf(tail),
    upper: failures === 0 ? null : (2 * total) / chiSquaredLaw(2 * failures).quantile(tail),
  };
}
