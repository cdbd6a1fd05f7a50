import type { LawName } from '../../statistics/law.ts';
import { laws } from '../../statistics/laws/laws.ts';
import type { StandardLaw } from '../../statistics/laws/standard-law.ts';
import { type Choice, type HistoryPlan, type HistoryState, ruleByHistory } from './by-history.ts';
import { exactly, type Failures, type Reckoning } from './reckoning.ts';
import type { MethodRule, Trial } from './rule.ts';

/** What is believed of the strength before the test, in the unit of the levels. */
export interface Guess {
  /** The median is thought to lie between these two. */
  readonly lowest: number;
  readonly highest: number;
  /** Standard deviation. */
  readonly spread: number;
}

export interface DOptimalPlan extends HistoryPlan {
  readonly guess: Guess;
  readonly distribution: LawName;
}

/** Drops by level on the fitted scale, and the guess of the spread as it has shrunk so far. */
interface Memory {
  readonly doses: readonly Failures[];
  readonly spread: number;
}

/** The guess of the spread shrinks by this in the second phase. From memory. */
const SHRINK = 0.8;

/**
 * A sequential D-optimal choice of levels after Neyer (1994, Technometrics 36, 61–70). The phases are the published
 * description's as remembered, which could not be compared with print:
 *
 * 1. until both outcomes are seen and the lowest failure lies within the guessed spread above the highest survival:
 *    halving; while all drops have one outcome, outwards by the guess;
 * 2. while failures and survivals do not overlap: the D-optimal level for a location in the middle of the gap and the
 *    guessed spread, which shrinks by a fifth at each such drop;
 * 3. then the D-optimal level for the best fit, its location kept within the levels tested and its spread within their
 *    range.
 *
 * Laws on ln E are taken on the logarithm of the level.
 *
 * @param reckon `roughly` for simulated tests
 */
export function dOptimal(
  plan: DOptimalPlan,
  reckon: (law: StandardLaw) => Reckoning = exactly,
): MethodRule<HistoryState<Memory>> {
  const law = laws[plan.distribution];
  const reckoning = reckon(law.standard);
  const isLog = law.scale === 'log';
  const to = (level: number) => (isLog ? Math.log(level) : level);
  const back = (y: number) => (isLog ? Math.exp(y) : y);
  const { guess, limits } = plan;
  const lowest = to(guess.lowest);
  const highest = to(guess.highest);
  const spread = isLog ? Math.log1p(guess.spread / ((guess.lowest + guess.highest) / 2)) : guess.spread;
  const start: Memory = { doses: [], spread };

  return ruleByHistory<Memory>(plan, start, takeIn, (memory) => {
    const { level, because } = choose(memory);
    return { level: back(level), because };
  });

  function takeIn(memory: Memory, trial: Trial): Memory {
    const level = to(trial.height);
    const failures = trial.outcome === 'failed' ? 1 : 0;
    const at = memory.doses.findIndex((dose) => dose.level === level);
    const doses =
      at < 0
        ? [...memory.doses, { level, drops: 1, failures }]
        : memory.doses.map((dose, i) =>
            i === at ? { level, drops: dose.drops + 1, failures: dose.failures + failures } : dose,
          );
    const shrinks = phaseOf(memory).phase === 2;
    return { doses, spread: shrinks ? SHRINK * memory.spread : memory.spread };
  }

  function choose(memory: Memory): Choice {
    const { doses } = memory;
    const seen = phaseOf(memory);
    if (doses.length === 0) return { level: (lowest + highest) / 2, because: 'the middle of the guess' };
    if (seen.phase === 1) {
      const { failed, survived } = seen;
      const low = Math.min(...doses.map(({ level }) => level));
      const high = Math.max(...doses.map(({ level }) => level));
      // Strength of positive laws has no level at or below nought.
      if (survived === null) {
        const out = Math.min((lowest + low) / 2, low - 2 * spread, 2 * low - high);
        return { level: inRange(out), because: 'below all failures' };
      }
      if (failed === null) {
        const out = Math.max((highest + high) / 2, high + 2 * spread, 2 * high - low);
        return { level: inRange(out), because: 'above all survivals' };
      }
      return { level: (failed + survived) / 2, because: 'between survivals and failures' };
    }
    const fit = seen.phase === 3 ? fitted(doses) : null;
    const location = fit?.location ?? ((seen.failed ?? 0) + (seen.survived ?? 0)) / 2;
    const scale = fit?.scale ?? memory.spread;
    const z = (limit: number | null, side: number) =>
      limit === null || limit <= 0 ? side * Infinity : (to(limit) - location) / scale;
    const information = reckoning.information(doses, location, scale);
    const place = reckoning.place(information, z(limits.min, -1), z(limits.max, 1));
    const because =
      fit === null ? 'which tells most of the guessed spread' : 'which tells most of median and spread';
    return { level: location + place * scale, because };
  }

  function inRange(y: number): number {
    const { min, max } = limits;
    return Math.min(
      max === null ? Infinity : to(max),
      Math.max(min === null || min <= 0 ? -Infinity : to(min), y),
    );
  }

  function fitted(doses: Memory['doses']): { location: number; scale: number } | null {
    const fit = reckoning.fit(doses);
    if (fit === null) return null;
    const low = Math.min(...doses.map(({ level }) => level));
    const high = Math.max(...doses.map(({ level }) => level));
    return {
      location: Math.min(high, Math.max(low, fit.location)),
      scale: Math.min(fit.scale, high - low),
    };
  }
}

/** Which phase the drops so far have come to, with the lowest failure and the highest survival. */
function phaseOf({ doses, spread }: Memory): {
  readonly phase: 1 | 2 | 3;
  readonly failed: number | null;
  readonly survived: number | null;
} {
  let failed: number | null = null;
  let survived: number | null = null;
  for (const { level, drops, failures } of doses) {
    if (failures > 0) failed = Math.min(failed ?? Infinity, level);
    if (failures < drops) survived = Math.max(survived ?? -Infinity, level);
  }
  if (failed === null || survived === null) return { phase: 1, failed, survived };
  const gap = failed - survived;
  return { phase: gap > spread ? 1 : gap >= 0 ? 2 : 3, failed, survived };
}
