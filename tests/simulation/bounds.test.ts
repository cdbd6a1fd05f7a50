import { describe, expect, it } from 'vitest';
import { ruleFor } from '../../src/impact/rules/method-rules.ts';
import { calibratedLimits, type Limits, profileLimits } from '../../src/simulation/bounds.ts';
import { carryOut, emptyTrials } from '../../src/simulation/carry-out.ts';
import { experimentOf } from '../../src/simulation/design-experiment.ts';
import { levelTable } from '../../src/simulation/level-table.ts';
import { singleLooks } from '../../src/simulation/sampling.ts';
import { tyresOf } from '../../src/simulation/strength.ts';
import { calibratedQuantile } from '../../src/statistics/calibration/calibrate.ts';
import { designedCriticals } from '../../src/statistics/calibration/designed-criticals.ts';
import { tabulatedCriticals } from '../../src/statistics/calibration/tabulated-criticals.ts';
import { normal } from '../../src/statistics/laws/normal.ts';
import { type ProfileBasis, prepareProfile } from '../../src/statistics/likelihood/constrained.ts';
import { likelihoodRatioCritical } from '../../src/statistics/likelihood/critical.ts';
import { profileQuantile } from '../../src/statistics/likelihood/profile.ts';
import { randomStream } from '../../src/statistics/random/random-stream.ts';
import { designWith, simulated, staircase } from './designs.ts';

// Looking at one value must say the same as seeking the limits does: another way, in other files, to the same answer.

const DROPS = 30;
const LEVEL = 0.95;

function forEachTest(visit: (basis: ProfileBasis) => void): void {
  const { design, assumed } = staircase({ drops: DROPS }, 1, 2);
  const levels = levelTable(1, 'identity');
  const sampling = singleLooks('identity');
  const trials = emptyTrials();
  for (let test = 0; test < 60; test++) {
    carryOut(
      ruleFor(design.protocol, null),
      tyresOf(assumed, null, 1, 0),
      false,
      levels,
      randomStream(4, test),
      trials,
    );
    visit(prepareProfile(sampling(trials, levels).sample, normal));
  }
}

interface Ends {
  readonly lower: number | null;
  readonly upper: number | null;
}

function expectSame(
  limits: Limits,
  two: (b: ProfileBasis, p: number) => Ends,
  one: (b: ProfileBasis, p: number) => Ends,
) {
  let held = 0;
  let asked = 0;
  forEachTest((basis) => {
    for (const p of [0.5, 0.1]) {
      for (const x of [996, 998.5, 999.7, 1000.2, 1001.4]) {
        const beside = limits(basis, p, x, LEVEL);
        const both = two(basis, p);
        const single = one(basis, p);
        // A limit within a millionth of the value may fall on either side.
        if (
          [both.lower, both.upper, single.lower, single.upper].some(
            (end) => end !== null && Math.abs(end - x) < 1e-6,
          )
        )
          continue;
        expect(beside).toEqual({
          boundAbove: single.lower !== null && single.lower > x,
          boundBelow: single.upper !== null && single.upper < x,
          held: (both.lower === null || both.lower <= x) && (both.upper === null || both.upper >= x),
        });
        asked += 1;
        if (beside.held) held += 1;
      }
    }
  });
  expect(asked).toBeGreaterThan(500);
  expect(held).toBeGreaterThan(50);
  expect(held).toBeLessThan(asked - 50);
}

describe('limits beside one value', () => {
  it('are those of the design simulated, where the table has them too', () => {
    // The table rests on 8,000 tests at each of its points; 4,000 here make a Monte Carlo error of a root of about 0.03.
    const { design } = staircase({ drops: DROPS }, 1, 2);
    const { experiment } = experimentOf(design)!;
    const table = tabulatedCriticals({ drops: DROPS, start: 1002, step: 1 });
    for (const placing of ['each value', 'grid'] as const) {
      const simulated = designedCriticals(experiment, { seed: 3, each: 4000 }, placing);
      for (const tail of ['both', 'above', 'below'] as const) {
        for (const [y, scale] of [
          [999.3, 0.7],
          [1000.6, 1.1],
          [1001.2, 2],
        ] as const) {
          const question = { p: 0.5, y, strength: { location: y, scale }, level: 0.95, tail } as const;
          expect(Math.abs(simulated(question) - table(question))).toBeLessThan(0.15);
        }
      }
    }
  });

  it('are those of the profile interval', () => {
    const ends = (sides: 1 | 2) => (basis: ProfileBasis, p: number) => {
      const { lower, upper } = profileQuantile(basis, p, likelihoodRatioCritical(LEVEL, sides));
      return { lower: lower.value, upper: upper.value };
    };
    expectSame(profileLimits, ends(2), ends(1));
  });

  it('are those of the calibrated interval', () => {
    const { design } = staircase({ drops: DROPS }, 1, 2);
    const calibrated = calibratedLimits(design)!;
    const criticals = tabulatedCriticals({ drops: DROPS, start: 1002, step: 1 });
    const spread = { reading: 'hits', step: 1, isSequential: true } as const;
    const ends = (sides: 1 | 2) => (basis: ProfileBasis, p: number) =>
      calibratedQuantile(basis, spread, criticals, p, LEVEL, sides);
    expectSame(calibrated.beside, ends(2), ends(1));
  });
});

describe('calibratedLimits', () => {
  it('are had for every design that analyze calibrates, and for no other', () => {
    const { design } = staircase({ drops: 30 }, 1, 0);
    const { protocol } = design;
    const had = [
      protocol,
      { ...protocol, stop: { drops: 20, rarer: 10 } },
      { ...protocol, stop: { reversals: 8 } },
      { ...protocol, sites: { ...protocol.sites, perSpecimen: 4 } },
      { ...protocol, distribution: 'logistic' as const },
      { ...protocol, limits: { min: 998, max: null } },
      designWith({}, 'pinch-rising-height').protocol,
      { ...protocol, method: 'fixed-level' as const, levels: [998, 1000, 1002], perLevel: 8, stop: null },
      { ...protocol, method: 'langlie' as const, limits: { min: 990, max: 1010 } },
    ];
    for (const one of had) expect(calibratedLimits({ ...design, protocol: one })).not.toBeNull();
    const none = [
      { ...protocol, energy: 'kinetic' as const },
      // How many tyres a rising-height test of so many drops takes is chance.
      designWith({ stop: { drops: 40 } }, 'pinch-rising-height').protocol,
    ];
    for (const one of none) expect(calibratedLimits({ ...design, protocol: one })).toBeNull();
  });

  it('hold in at least 94 % of tests, where profile limits hold in 92.9 % (SEN-12: 30 drops, step of one spread)', async () => {
    const { design, assumed } = staircase({ drops: 30 }, 1, 0);
    const point = await simulated(design, assumed, 4000);
    const intervals = point.estimates[0]!.intervals;
    const held = (method: string, sides: number) =>
      intervals.find((interval) => interval.method === method && interval.sides === sides)!.coverage;
    for (const sides of [1, 2]) {
      const { value, error } = held('calibrated', sides);
      expect(value).toBeGreaterThan(0.94 - 2 * error);
      expect(value).toBeLessThan(0.985);
    }
    expect(held('calibrated', 2).value).toBeGreaterThan(held('profile-likelihood', 2).value);
  });
});
