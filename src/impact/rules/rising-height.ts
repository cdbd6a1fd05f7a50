import type { Stop } from '../../documents/kinds.ts';
import { quote } from '../../problem/echo.ts';
import type { Levels } from './levels.ts';
import { type Advice, LevelAdvice, type MethodRule } from './rule.ts';
import { type Placed, placing, type SeriesState, seriesStart } from './series-state.ts';
import { stopReached } from './stop.ts';

export interface RisingHeightPlan {
  readonly levels: Levels;
  readonly stop: Stop | null;
}

/** Whether a specimen's rise has ended: it failed, or it survived the highest level of the rig. */
export function hasEnded(last: Placed, levels: Levels): boolean {
  return last.outcome === 'failed' || last.index >= levels.highest;
}

/**
 * The rising-height method: one specimen is hit from the start upwards, level by level, until it fails or has
 * survived the highest level; then the next one. Source: common practice, no source.
 *
 * A state whose `last` is another specimen's last drop advises for that specimen: how interleaved rises are read.
 */
export function risingHeight(plan: RisingHeightPlan): MethodRule<SeriesState> {
  return {
    start: seriesStart(plan.levels),
    step: (state, trial) => placing(state, trial, hasEnded),
    advice({ levels, last, progress }): Advice {
      const stop = stopReached(plan.stop, progress);
      if (stop !== null) return { decision: 'stop', why: `Stop: ${stop}.` };
      const start = levels.at(levels.within(0));
      if (last === null) {
        return { decision: 'height', height: start, specimen: 'new', why: `Start at ${levels.say(start)}.` };
      }
      const seen = () => `${quote(last.specimen)} ${last.outcome} at ${levels.say(levels.at(last.index))}`;
      if (hasEnded(last, levels)) {
        return new LevelAdvice(start, 'new', () => {
          const top = last.outcome === 'survived' ? ', the highest level' : '';
          return `${seen()}${top}: take a new specimen and start at ${levels.say(start)}.`;
        });
      }
      const next = levels.at(levels.within(last.index + 1));
      return new LevelAdvice(next, 'same', () => `${seen()}: raise one step to ${levels.say(next)}.`);
    },
  };
}
