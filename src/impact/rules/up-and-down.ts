import type { Stop } from '../../documents/kinds.ts';
import { quote } from '../../problem/echo.ts';
import type { Levels } from './levels.ts';
import { type Advice, LevelAdvice, type MethodRule } from './rule.ts';
import { type Placed, placing, type SeriesState, seriesStart } from './series-state.ts';
import { stopReached } from './stop.ts';

export interface UpAndDownPlan {
  readonly levels: Levels;
  readonly stop: Stop | null;
  /** Hits that one specimen may take. */
  readonly perSpecimen: number;
  /** Whether a specimen that failed may be hit again at another site. */
  readonly goesOnAfterFailure: boolean;
  /** Survivals in a row at a level before it is raised; one is the plain method. */
  readonly survivalsToRaise?: number;
}

/**
 * The share failed that a transformed up-and-down series settles about: at the level where k survivals in a row are as
 * likely as not, survival has probability 2^(−1/k). Wetherill and Levitt (1965), Br. J. Math. Stat. Psychol. 18, 1–10;
 * Levitt (1971), J. Acoust. Soc. Am. 49, 467–477.
 */
export function shareAimedAt(survivalsToRaise: number): number {
  return -Math.expm1(-Math.LN2 / survivalsToRaise);
}

/**
 * The up-and-down method: one level down after a failure, one up after a survival; at a limit of the rig it stays.
 * Source: Dixon and Mood 1948, J. Am. Stat. Assoc. 43, 109–126. Where several survivals in a row are asked for before
 * a level is raised, the transformed rule of Wetherill and Levitt (1965): the levels then gather at `shareAimedAt`.
 */
export function upAndDown(plan: UpAndDownPlan): MethodRule<SeriesState> {
  const { survivalsToRaise = 1 } = plan;
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
        return { decision: 'height', height: start, specimen: 'new', why: `Start at ${levels.say(start)}.` };
      }
      const move = moveAfter(last, survivalsToRaise);
      const next = levels.at(levels.within(last.index + move));
      const specimen = isOver(last) ? 'new' : 'any';
      return new LevelAdvice(next, specimen, () => {
        const site = specimen === 'new' ? '' : `, or a free site of ${quote(last.specimen)}`;
        return `${sentence(levels, last, move, next, survivalsToRaise)}, on a new specimen${site}.`;
      });
    },
  };
}

/** Levels up or down after a drop; nought where more survivals are wanted first. */
function moveAfter(last: Placed, survivalsToRaise: number): -1 | 0 | 1 {
  if (last.outcome === 'failed') return -1;
  // A run that went on at a limit of the rig raises by each further set of survivals.
  return last.survivals % survivalsToRaise === 0 ? 1 : 0;
}

function sentence(levels: Levels, last: Placed, move: -1 | 0 | 1, next: number, wanted: number): string {
  const from = levels.at(last.index);
  const seen = `${quote(last.specimen)} ${last.outcome} at ${levels.say(from)}`;
  const inARow = last.survivals % wanted === 0 ? wanted : last.survivals % wanted;
  const run = wanted > 1 && last.outcome === 'survived' ? `, ${inARow} of ${wanted} in a row` : '';
  if (move === 0) return `${seen}${run}: stay at ${levels.say(next)}`;
  if ((next - from) * move <= 0)
    return `${seen}${run}, and the limit of the ${levels.noun} is reached: set ${levels.say(next)}`;
  return `${seen}${run}: ${move < 0 ? 'lower' : 'raise'} one step to ${levels.say(next)}`;
}
