import type { Stop } from '../../documents/kinds.ts';
import { quote } from '../../problem/echo.ts';
import { height } from '../../quantity/format.ts';
import type { Levels } from './levels.ts';
import type { Advice, MethodRule } from './rule.ts';
import { type Placed, placing, type SeriesState, seriesStart } from './series-state.ts';
import { stopReached } from './stop.ts';

export interface UpAndDownPlan {
  readonly levels: Levels;
  readonly stop: Stop | null;
  /** Hits that one specimen may take. */
  readonly perSpecimen: number;
  /** Whether a specimen that failed may be hit again at another site. */
  readonly goesOnAfterFailure: boolean;
}

/**
 * The up-and-down method: one level down after a failure, one up after a survival; at a limit of the rig it stays.
 * Source: Dixon and Mood 1948, J. Am. Stat. Assoc. 43, 109–126.
 */
export function upAndDown(plan: UpAndDownPlan): MethodRule<SeriesState> {
  const isOver = (last: Placed) =>
    last.hit >= plan.perSpecimen || (last.outcome === 'failed' && !plan.goesOnAfterFailure);
  return {
    start: seriesStart(plan.levels),
    step: (state, trial) => placing(state, trial, isOver),
    advice({ levels, last, progress }): Advice {
      const stop = stopReached(plan.stop, progress);
      if (stop !== null) return { decision: 'stop', why: `Stop: ${stop}.` };
      if (last === null) {
        const start = levels.at(levels.within(0));
        return { decision: 'height', height: start, specimen: 'new', why: `Start at ${height(start)}.` };
      }
      const next = levels.at(levels.within(last.index + (last.outcome === 'failed' ? -1 : 1)));
      const specimen = isOver(last) ? 'new' : 'any';
      return {
        decision: 'height',
        height: next,
        specimen,
        get why() {
          const site = specimen === 'new' ? '' : `, or a free site of ${quote(last.specimen)}`;
          return `${move(levels, last, next)}, on a new specimen${site}.`;
        },
      };
    },
  };
}

function move(levels: Levels, last: Placed, next: number): string {
  const from = levels.at(last.index);
  const seen = `${quote(last.specimen)} ${last.outcome} at ${height(from)}`;
  const wanted = last.outcome === 'failed' ? -1 : 1;
  if ((next - from) * wanted <= 0)
    return `${seen}, and the limit of the heights is reached: set ${height(next)}`;
  return `${seen}: ${last.outcome === 'failed' ? 'lower' : 'raise'} one step to ${height(next)}`;
}
