import type { Experiment } from '../../../src/statistics/calibration/experiment.ts';
import { normal } from '../../../src/statistics/laws/normal.ts';

/** A plain up-and-down walk of n drops, written down by hand for the tests of this room. */
export function staircase(
  drops: number,
  step: number,
  start: number,
  more: Partial<Experiment> = {},
): Experiment {
  return {
    law: normal,
    levels: Float64Array.from({ length: 2 * drops + 1 }, (_, i) => start + (i - drops) * step),
    step,
    mostDrops: drops,
    mostSpecimens: drops,
    reading: 'hits',
    share: 0,
    isSequential: true,
    walk(fails, into) {
      let level = drops;
      for (let i = 0; i < drops; i++) {
        const failed = fails(level, i);
        into.level[i] = level;
        into.failed[i] = failed ? 1 : 0;
        into.specimen[i] = i;
        level += failed ? -1 : 1;
      }
      into.size = drops;
    },
    ...more,
  };
}

/** Two hits at one level on each of a number of specimens. */
export function pairs(specimens: number, level: number, share: number): Experiment {
  return {
    ...staircase(2 * specimens, 1, level),
    levels: Float64Array.of(level),
    mostSpecimens: specimens,
    share,
    isSequential: false,
    walk(fails, into) {
      for (let i = 0; i < 2 * specimens; i++) {
        into.level[i] = 0;
        into.specimen[i] = i >> 1;
        into.failed[i] = fails(0, i >> 1) ? 1 : 0;
      }
      into.size = 2 * specimens;
    },
  };
}
