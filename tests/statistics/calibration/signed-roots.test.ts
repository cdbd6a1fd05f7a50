import { describe, expect, it } from 'vitest';
import type { Experiment } from '../../../src/statistics/calibration/experiment.ts';
import { drawn } from '../../../src/statistics/calibration/replicates.ts';
import { signedRoots } from '../../../src/statistics/calibration/signed-roots.ts';
import { normal } from '../../../src/statistics/laws/normal.ts';
import { prepareProfile } from '../../../src/statistics/likelihood/constrained.ts';
import { gatherObservations } from '../../../src/statistics/likelihood/observation.ts';
import { testQuantile } from '../../../src/statistics/likelihood/profile.ts';
import { randomStream } from '../../../src/statistics/random/random-stream.ts';
import { staircase } from './walk.ts';

// The statistic by Newton's method (src/statistics/likelihood, held to R in its own tests) judges the one by the grid of
// scales, on every kind of test that comes up, with and without an estimate.
const rises: Experiment = {
  ...staircase(6, 0.7, -2),
  levels: Float64Array.from({ length: 9 }, (_, i) => -2 + 0.7 * i),
  mostDrops: 54,
  reading: 'rises',
  share: 1,
  isSequential: false,
  walk(fails, into) {
    let drop = 0;
    for (let specimen = 0; specimen < 6; specimen++) {
      for (let level = 0; level < 9; level++) {
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

describe('signedRoots', () => {
  it.each([
    ['12 drops, wide steps', staircase(12, 1.9, 0.4), 0.5, 0],
    ['20 drops, the 10 % point', staircase(20, 0.8, -1.5), 0.1, -1.2815515655446004],
    ['10 drops, narrow steps, a far value', staircase(10, 0.4, 1), 0.5, -1.1],
    ['six rises', rises, 0.5, 0.15],
  ])('agrees with the likelihood ratio of each test by itself: %s', (_, experiment, p, y) => {
    const drawing = drawn(experiment);
    const tests = drawing.at({ location: 0, scale: 1 }, 300, randomStream(11));
    const roots = new Float64Array(300);
    signedRoots(drawing, experiment.step)(tests, y, p, roots);
    const kinds = new Set<string>();
    for (let t = 0; t < 300; t++) {
      const observations = [];
      for (let e = tests.start[t]!; e < tests.start[t + 1]!; e++) {
        const cell = tests.cell[e]!;
        observations.push({
          lower: drawing.cells.lower[cell]!,
          upper: drawing.cells.upper[cell]!,
          count: tests.count[e]!,
        });
      }
      const basis = prepareProfile(gatherObservations(observations, 'identity'), normal);
      kinds.add(basis.fit.kind);
      const exact = testQuantile(basis, p, y).statistic;
      // An error of 0.015 in a statistic of 4 moves a limit by a fifth of a percent.
      expect(Math.abs(roots[t]! ** 2 - exact)).toBeLessThan(0.015);
      if (basis.fit.kind === 'exists' && exact > 0.01) {
        const isAbove = basis.fit.location + basis.fit.scale * normal.quantile(p) > y;
        expect(Math.sign(roots[t]!)).toBe(isAbove ? 1 : -1);
      }
    }
    expect(kinds.size).toBeGreaterThan(1);
  });
});
