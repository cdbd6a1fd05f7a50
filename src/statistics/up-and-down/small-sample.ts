import { normal } from '../laws/normal.ts';
import { fitLocation, type LocationFit } from '../likelihood/fit-location.ts';
import { gatherObservations } from '../likelihood/observation.ts';
import type { Grid, LevelDrop } from './grid.ts';

/**
 * The median of a short up-and-down test: the maximum-likelihood mean of a normal strength whose spread is taken to be
 * the step. Every one of the 124 values of Dixon's table (1965, JASA 60, 967–978) is this to all printed digits, so it
 * is computed here and not tabulated; the table's long first runs are its limit.
 *
 * @returns on the scale of the grid, with a standard error that takes the spread as known; null until both a failure and a
 *   survival have been seen
 */
export function smallSampleMedian(drops: readonly LevelDrop[], { origin, step }: Grid): LocationFit | null {
  const observations = drops.map(({ level, failed }) => {
    const y = origin + level * step;
    return failed ? { lower: -Infinity, upper: y, count: 1 } : { lower: y, upper: Infinity, count: 1 };
  });
  return fitLocation(gatherObservations(observations, 'identity'), normal, step);
}
