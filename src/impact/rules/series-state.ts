import type { Levels } from './levels.ts';
import type { Trial } from './rule.ts';
import { counting, NO_PROGRESS, type Progress } from './stop.ts';

/** The last valid drop, placed on the levels. */
export interface Placed {
  /** Index of the level nearest to the height as it was. */
  readonly index: number;
  readonly outcome: Trial['outcome'];
  readonly specimen: string;
  readonly hit: number;
}

/** All that a method which moves by one level remembers of a series: constant in size. */
export interface SeriesState {
  readonly levels: Levels;
  readonly last: Placed | null;
  readonly progress: Progress;
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
  const last: Placed = { index: state.levels.nearest(trial.height), outcome, specimen, hit };
  const before = state.last?.outcome ?? null;
  return {
    levels: state.levels,
    last,
    progress: counting(state.progress, trial, before, isOver(last, state.levels)),
  };
}
