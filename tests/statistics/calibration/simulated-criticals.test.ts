import { describe, expect, it } from 'vitest';
import { simulatedCriticals } from '../../../src/statistics/calibration/simulated-criticals.ts';
import { normal } from '../../../src/statistics/laws/normal.ts';
import reference from '../../reference/calibration/critical.json' with { type: 'json' };
import { staircase } from './walk.ts';

describe('simulatedCriticals', () => {
  // tests/reference/scripts/calibration-critical.R: its own walk, probit fits by glm, 20,000 tests a case. Monte Carlo
  // errors of a root about 0.02 here and 0.015 there; the roots of so few drops come in jumps of up to 0.08 on top.
  it.each(reference.cases)(
    'finds the roots of R: $drops drops, spread $scale steps, start $offset steps off, p $p',
    ({ drops, scale, offset, p, ...found }) => {
      const experiment = staircase(drops, 1, offset);
      const criticals = simulatedCriticals(experiment, { seed: 2, each: 8000 });
      const strength = { location: -scale * normal.quantile(p), scale };
      // With the start on a whole step, tests with one common level at the value itself lie neither above nor below it.
      const tails =
        Number.isInteger(offset) && p === 0.5 ? (['both'] as const) : (['both', 'above', 'below'] as const);
      for (const tail of tails) {
        [0.9, 0.95].forEach((level, i) => {
          const root = criticals({ p, y: 0, strength, level, tail });
          expect(Math.abs(root - found[tail][i]!)).toBeLessThan(0.11);
        });
      }
    },
  );

  it('gives the same for the same seed', () => {
    const question = {
      p: 0.5,
      y: 0,
      strength: { location: 0, scale: 1 },
      level: 0.95,
      tail: 'both',
    } as const;
    const at = (seed: number) => simulatedCriticals(staircase(20, 1, 0), { seed, each: 200 })(question);
    expect(at(4)).toBe(at(4));
    expect(at(4)).not.toBe(at(5));
  });

  it('draws anew where the tests at hand say little of the strength asked for', () => {
    const near = { p: 0.5, y: 0, strength: { location: 0, scale: 1 }, level: 0.95, tail: 'both' } as const;
    const far = { ...near, y: 6, strength: { location: 6, scale: 0.5 } };
    const experiment = staircase(20, 1, 0);
    const warm = simulatedCriticals(experiment, { seed: 2, each: 2000 });
    warm(near);
    const cold = simulatedCriticals(experiment, { seed: 3, each: 2000 });
    expect(Math.abs(warm(far) - cold(far))).toBeLessThan(0.25);
  });

  it('weighs the tests of neighbouring strengths into those of one between', () => {
    const at = (location: number, scale: number) =>
      ({ p: 0.5, y: location, strength: { location, scale }, level: 0.9, tail: 'above' }) as const;
    const experiment = staircase(20, 1, -2);
    const weighted = simulatedCriticals(experiment, { seed: 3, each: 4000 });
    weighted(at(0, 1));
    weighted(at(0.4, 1.3));
    const direct = simulatedCriticals(experiment, { seed: 4, each: 4000 });
    // Monte Carlo errors about 0.03 each.
    expect(Math.abs(weighted(at(0.15, 1.1)) - direct(at(0.15, 1.1)))).toBeLessThan(0.12);
  });
});
