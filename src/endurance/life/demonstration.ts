import { reliabilityShown } from '../../statistics/demonstration/success-run.ts';
import { shareLimits } from '../../statistics/rates/proportion.ts';
import type { TyreLife } from './lives.ts';

/** What is known of each tyre at a distance, whatever the law of life. */
export interface StandingAt {
  readonly survived: number;
  readonly failed: number;
  /** Taken off before it: they say nothing of it. */
  readonly unknown: number;
}

export function standingAt(lives: readonly TyreLife[], at: number): StandingAt {
  const survived = lives.filter(({ lower, upper }) => lower >= at && upper > at).length;
  // One that was seen whole before and failed after may have failed by then: it counts as failed, the safe way.
  const failed = lives.filter(
    ({ lower, upper }) => upper <= at || (lower < at && Number.isFinite(upper)),
  ).length;
  return { survived, failed, unknown: lives.length - survived - failed };
}

/**
 * The reliability at a distance by counting alone, with the limits of Clopper and Pearson (1934). Tyres taken off before
 * it are left out, those that failed before it are not, which makes the share rather too low than too high.
 *
 * @returns null where no tyre tells
 */
export function countedReliability(lives: readonly TyreLife[], at: number, confidence: number, sides: 1 | 2) {
  const { survived, failed } = standingAt(lives, at);
  const n = survived + failed;
  if (n === 0) return null;
  const { lower, upper } = shareLimits(survived, n, confidence, sides);
  return { value: survived / n, lower, upper, survived, n };
}

/**
 * The longest distance at which so many tyres are known to have survived, none having failed before it, that at most a
 * share fails by it, with one-sided confidence: n with R = 1 − share and Rⁿ ≤ 1 − confidence. Free of any law.
 *
 * @returns km; null where no distance was survived by enough tyres
 */
export function shownLife(lives: readonly TyreLife[], share: number, confidence: number): number | null {
  const distances = [...new Set(lives.map(({ lower }) => lower))].sort((a, b) => b - a);
  const shows = (at: number): boolean => {
    const { survived, failed } = standingAt(lives, at);
    return at > 0 && survived > 0 && reliabilityShown(failed, survived + failed, confidence) >= 1 - share;
  };
  return distances.find(shows) ?? null;
}
