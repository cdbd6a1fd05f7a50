import type { Experiment } from '../src/statistics/calibration/experiment.ts';
import { normal } from '../src/statistics/laws/normal.ts';

// Tests of normal strength that studies simulate, as statistics sees them: levels by number, no heights.

/** Up-and-down from a start in equal steps without limits; `perSpecimen` hits on each specimen in turn. */
export function steppedTest(plan: {
  drops: number;
  step: number;
  start: number;
  perSpecimen?: number;
  share?: number;
}): Experiment {
  const { drops, step, start, perSpecimen = 1, share = 0 } = plan;
  return {
    law: normal,
    levels: Float64Array.from({ length: 2 * drops + 1 }, (_, i) => start + (i - drops) * step),
    step,
    mostDrops: drops,
    mostSpecimens: Math.ceil(drops / perSpecimen),
    reading: 'hits',
    share,
    isSequential: true,
    walk(fails, into) {
      let level = drops;
      for (let i = 0; i < drops; i++) {
        const specimen = Math.floor(i / perSpecimen);
        const failed = fails(level, specimen);
        into.level[i] = level;
        into.failed[i] = failed ? 1 : 0;
        into.specimen[i] = specimen;
        level += failed ? -1 : 1;
      }
      into.size = drops;
    },
  };
}

/** Rising height: each specimen from the start upwards until it fails. */
export function risingTest(plan: {
  specimens: number;
  step: number;
  start: number;
  levels: number;
}): Experiment {
  const { specimens, step, start, levels } = plan;
  return {
    law: normal,
    levels: Float64Array.from({ length: levels }, (_, i) => start + i * step),
    step,
    mostDrops: specimens * levels,
    mostSpecimens: specimens,
    reading: 'rises',
    share: 1,
    isSequential: false,
    walk(fails, into) {
      let drop = 0;
      for (let specimen = 0; specimen < specimens; specimen++) {
        for (let level = 0; level < levels; level++) {
          const failed = fails(level, specimen);
          into.level[drop] = level;
          into.failed[drop] = failed ? 1 : 0;
          into.specimen[drop++] = specimen;
          if (failed) break;
        }
      }
      into.size = drop;
    },
  };
}

/** Fixed levels, `each` hits at every one. */
export function fixedTest(plan: { levels: number; each: number; step: number; lowest: number }): Experiment {
  const { levels, each, step, lowest } = plan;
  return {
    law: normal,
    levels: Float64Array.from({ length: levels }, (_, i) => lowest + i * step),
    step,
    mostDrops: levels * each,
    mostSpecimens: levels * each,
    reading: 'hits',
    share: 0,
    isSequential: false,
    walk(fails, into) {
      for (let drop = 0; drop < levels * each; drop++) {
        const level = Math.floor(drop / each);
        into.level[drop] = level;
        into.failed[drop] = fails(level, drop) ? 1 : 0;
        into.specimen[drop] = drop;
      }
      into.size = levels * each;
    },
  };
}
