import type { Stop } from '../../documents/kinds.ts';
import { counted } from '../../quantity/format.ts';
import { sayer, type Varied } from './levels.ts';
import type { Advice, MethodRule } from './rule.ts';
import type { MethodState } from './series-state.ts';
import { isUsedUp, type Specimens } from './specimens.ts';
import { counting, NO_PROGRESS, stopReached } from './stop.ts';

export interface FixedLevelPlan extends Specimens {
  /** mm (or kg), rising. */
  readonly levels: readonly number[];
  /** Drops at each level; null where only the stop rule ends the series. */
  readonly perLevel: number | null;
  readonly stop: Stop | null;
  readonly varied: Varied;
}

/** How many valid drops each level has had. */
export interface FixedLevelState extends MethodState {
  readonly made: readonly number[];
}

/**
 * The fixed-level method (quantal response): a set number of drops at each level, in any order. The advice fills the
 * level that lacks most, the lowest of those; a lab that randomises takes another. Source: common practice, no source.
 */
export function fixedLevel(plan: FixedLevelPlan): MethodRule<FixedLevelState> {
  const { levels, perLevel } = plan;
  const say = sayer(plan.varied);
  return {
    start: { last: null, progress: NO_PROGRESS, made: levels.map(() => 0) },
    step(state, trial) {
      const { outcome, specimen, hit } = trial;
      const at = nearestOf(levels, trial.height);
      const before = state.last?.outcome ?? null;
      return {
        last: { outcome, specimen, hit },
        progress: counting(state.progress, trial, before, isUsedUp(trial, plan)),
        made: state.made.map((count, index) => (index === at ? count + 1 : count)),
      };
    },
    advice({ last, progress, made }): Advice {
      const stop = stopReached(plan.stop, progress);
      if (stop !== null) return { decision: 'stop', why: `Stop: ${stop}.` };
      const fewest = Math.min(...made);
      if (perLevel !== null && fewest >= perLevel) {
        const all = `${counted(perLevel, 'drop')} made at each of ${counted(levels.length, 'level')}`;
        return { decision: 'stop', why: `Stop: ${all}.` };
      }
      const height = levels[made.indexOf(fewest)]!;
      const isNew = last === null || isUsedUp(last, plan);
      const of = perLevel === null ? '' : ` of ${perLevel}`;
      const why = `Set ${say(height)}: ${fewest}${of} made there; any other level that is not full is as right.`;
      return { decision: 'height', height, specimen: isNew ? 'new' : 'any', why };
    },
  };
}

/** Index of the level nearest to a height; halfway between two, the lower one. */
export function nearestOf(levels: readonly number[], height: number): number {
  let best = 0;
  for (const [index, level] of levels.entries()) {
    if (Math.abs(level - height) < Math.abs(levels[best]! - height)) best = index;
  }
  return best;
}
