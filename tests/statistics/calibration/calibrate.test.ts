import { describe, expect, it } from 'vitest';
import { calibratedQuantile } from '../../../src/statistics/calibration/calibrate.ts';
import { drawing } from '../../../src/statistics/calibration/draw.ts';
import { emptyTrials } from '../../../src/statistics/calibration/experiment.ts';
import { rungsOf } from '../../../src/statistics/calibration/rungs.ts';
import { simulatedCriticals } from '../../../src/statistics/calibration/simulated-criticals.ts';
import { tabulatedCriticals } from '../../../src/statistics/calibration/tabulated-criticals.ts';
import { normal } from '../../../src/statistics/laws/normal.ts';
import { prepareProfile } from '../../../src/statistics/likelihood/constrained.ts';
import { likelihoodRatioCritical } from '../../../src/statistics/likelihood/critical.ts';
import { gatherObservations, type Observation } from '../../../src/statistics/likelihood/observation.ts';
import { profileQuantile } from '../../../src/statistics/likelihood/profile.ts';
import { randomStream } from '../../../src/statistics/random/random-stream.ts';
import { staircase } from './walk.ts';

/** An up-and-down test drawn at median 0 and spread 1. */
function drawn(drops: number, step: number, start: number, index: number): Observation[] {
  const experiment = staircase(drops, step, start);
  const trials = emptyTrials(drops);
  drawing(experiment, { location: 0, scale: 1 })(randomStream(5, index), trials, new Float64Array(drops));
  return Array.from({ length: drops }, (_, i) => {
    const level = experiment.levels[trials.level[i]!]!;
    return trials.failed[i]
      ? { lower: -Infinity, upper: level, count: 1 }
      : { lower: level, upper: Infinity, count: 1 };
  });
}

const basisOf = (observations: readonly Observation[]) =>
  prepareProfile(gatherObservations(observations, 'identity'), normal);

describe('calibratedQuantile', () => {
  it('moves with the scale on which energies are told', () => {
    const seen = drawn(30, 1, -1, 3);
    const moved = seen.map(({ lower, upper, count }) => ({
      lower: 48 + 4 * lower,
      upper: 48 + 4 * upper,
      count,
    }));
    const limits = (observations: readonly Observation[], step: number, start: number) =>
      calibratedQuantile(
        basisOf(observations),
        staircase(30, step, start),
        tabulatedCriticals({ drops: 30, step, start }),
        0.5,
        0.95,
        2,
      );
    const plain = limits(seen, 1, -1);
    const other = limits(moved, 4, 44);
    expect(other.lower).toBeCloseTo(48 + 4 * plain.lower!, 6);
    expect(other.upper).toBeCloseTo(48 + 4 * plain.upper!, 6);
  });

  it('finds by simulation what it finds by the table', () => {
    for (const index of [3, 8]) {
      const basis = basisOf(drawn(30, 1, -1, index));
      const experiment = staircase(30, 1, -1);
      const table = tabulatedCriticals({ drops: 30, step: 1, start: -1 });
      const simulated = simulatedCriticals(experiment, { seed: 1, each: 4000 });
      const rungs = rungsOf(basis, experiment);
      for (const p of [0.5, 0.1]) {
        const one = calibratedQuantile(basis, experiment, table, p, 0.95, 2);
        const two = calibratedQuantile(basis, experiment, simulated, p, 0.95, 2, rungs);
        const width = one.upper! - one.lower!;
        expect(Math.abs(one.lower! - two.lower!)).toBeLessThan(0.06 * width);
        expect(Math.abs(one.upper! - two.upper!)).toBeLessThan(0.06 * width);
      }
    }
  });

  it('is unbounded where the profile interval is', () => {
    // No failure: nothing bounds the strength above. From the definition of the likelihood.
    const survived = Array.from({ length: 12 }, (_, i) => ({ lower: i, upper: Infinity, count: 1 }));
    const basis = basisOf(survived);
    const table = tabulatedCriticals({ drops: 12, step: 1, start: 0 });
    const limits = calibratedQuantile(basis, staircase(12, 1, 0), table, 0.5, 0.95, 2);
    expect(limits.upper).toBeNull();
    expect(limits.lower).not.toBeNull();
  });

  it('holds where the profile interval does not: 15 drops, steps of half a spread, three steps off', () => {
    // Of 500 tests with a nominal 95 %: a share of 0.95 has a Monte Carlo error of 0.01.
    let profile = 0;
    let calibrated = 0;
    const critical = likelihoodRatioCritical(0.95, 2);
    for (let index = 0; index < 500; index++) {
      const start = -1.75 + 0.001 * index;
      const basis = basisOf(drawn(15, 0.5, start, index));
      const table = tabulatedCriticals({ drops: 15, step: 0.5, start });
      const { lower, upper } = profileQuantile(basis, 0.5, critical);
      const limits = calibratedQuantile(basis, staircase(15, 0.5, start), table, 0.5, 0.95, 2);
      profile += Number((lower.value ?? -9) <= 0 && (upper.value ?? 9) >= 0);
      calibrated += Number((limits.lower ?? -9) <= 0 && (limits.upper ?? 9) >= 0);
    }
    expect(profile / 500).toBeLessThan(0.91);
    expect(calibrated / 500).toBeGreaterThan(0.92);
    expect(calibrated / 500).toBeLessThan(0.985);
  });
});
