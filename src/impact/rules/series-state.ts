import type { Levels } from './levels.ts';
import type { Trial } from './rule.ts';
import { counting, NO_PROGRESS, type Progress } from './stop.ts';

/** What the state of every method shows of its series. */
export interface MethodState {
  readonly last: LastTrial | null;
  readonly progress: Progress;
}

/** The last valid drop. */
export interface LastTrial {
  readonly outcome: Trial['outcome'];
  readonly specimen: string;
  readonly hit: number;
}

/** The last valid drop, placed on the levels. */
export interface Placed extends LastTrial {
  /** Index of the level nearest to the height as it was. */
  readonly index: number;
  /** Survivals in a row at this level, up to this drop; nought for a failure. */
  readonly survivals: number;
}

/** All that a method which moves by one level remembers of a series: constant in size. */
export interface SeriesState extends MethodState {
  readonly levels: Levels;
  readonly last: Placed | null;
}

export function seriesStart(levels: Levels): SeriesState {
  return { levels, last: null, progress: NO_PROGRESS };
}

/**
 * Takes one valid drop in.
 *
 * @param isOver whether the specimen of a placed drop may not be hit again in this series.
 */
export function placing(
  state: SeriesState,
  trial: Trial,
  isOver: (placed: Placed, levels: Levels) => boolean,
): SeriesState {
  const { outcome, specimen, hit } = trial;
  const index = state.levels.nearest(trial.height);
  const before = state.last;
  const inARow = before !== null && before.index === index ? before.survivals : 0;
  const last: Placed = {
    index,
    outcome,
    specimen,
    hit,
    survivals: outcome === 'survived' ? inARow + 1 : 0,
  };
  return {
    levels: state.levels,
    last,
    progress: counting(state.progress, trial, before?.outcome ?? null, isOver(last, state.levels)),
  };
}
