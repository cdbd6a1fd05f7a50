import type { Stop } from '../../documents/kinds.ts';
import { quote } from '../../problem/echo.ts';
import { type HeightLimits, sayer, type Varied } from './levels.ts';
import { type Advice, LevelAdvice, type MethodRule, type Trial } from './rule.ts';
import type { MethodState } from './series-state.ts';
import { isUsedUp, type Specimens } from './specimens.ts';
import { counting, NO_PROGRESS, stopReached } from './stop.ts';

/** What every method that sets a level of its own after each drop is given. */
export interface HistoryPlan extends Specimens {
  /** Lowest and highest level that can be set. */
  readonly limits: HeightLimits;
  /** mm; null for none. */
  readonly resolution: number | null;
  readonly varied: Varied;
  readonly stop: Stop | null;
}

/** The state of such a method: its own memory beside what all show. */
export interface HistoryState<Memory> extends MethodState {
  readonly memory: Memory;
}

/** A level and the half sentence why. */
export interface Choice {
  readonly level: number;
  readonly because: string;
}

/**
 * A method that chooses each level by all drops before it, from a memory that takes each drop in and the choice that a
 * memory leads to. Levels are kept within the limits and rounded to the resolution.
 */
export function ruleByHistory<Memory>(
  plan: HistoryPlan,
  start: Memory,
  takeIn: (memory: Memory, trial: Trial) => Memory,
  choose: (memory: Memory) => Choice,
): MethodRule<HistoryState<Memory>> {
  const say = sayer(plan.varied);
  return {
    start: { last: null, progress: NO_PROGRESS, memory: start },
    step(state, trial) {
      const { outcome, specimen, hit } = trial;
      return {
        last: { outcome, specimen, hit },
        progress: counting(state.progress, trial, state.last?.outcome ?? null, isUsedUp(trial, plan)),
        memory: takeIn(state.memory, trial),
      };
    },
    advice({ last, progress, memory }): Advice {
      const stop = stopReached(plan.stop, progress);
      if (stop !== null) return { decision: 'stop', why: `Stop: ${stop}.` };
      const choice = choose(memory);
      const level = settable(choice.level, plan);
      if (last === null) {
        return {
          decision: 'height',
          height: level,
          specimen: 'new',
          why: `Start at ${say(level)}, ${choice.because}.`,
        };
      }
      const isNew = isUsedUp(last, plan);
      return new LevelAdvice(level, isNew ? 'new' : 'any', () => {
        const site = isNew ? '' : `, or a free site of ${quote(last.specimen)}`;
        return `${quote(last.specimen)} ${last.outcome}: set ${say(level)}, ${choice.because}, on a new specimen${site}.`;
      });
    },
  };
}

function settable(level: number, { limits, resolution }: HistoryPlan): number {
  const within = Math.min(limits.max ?? Infinity, Math.max(limits.min ?? -Infinity, level));
  return resolution === null
    ? within
    : Number((Math.round(within / resolution) * resolution).toPrecision(12));
}
