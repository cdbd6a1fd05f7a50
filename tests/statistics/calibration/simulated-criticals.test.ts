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
      const criticals = simulatedCriticals(experiment, normal, { seed: 2, each: 8000 });
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
    const at = (seed: number) =>
      simulatedCriticals(staircase(20, 1, 0), normal, { seed, each: 200 })(question);
    expect(at(4)).toBe(at(4));
    expect(at(4)).not.toBe(at(5));
  });

  it('draws anew where the tests at hand say little of the strength asked for', () => {
    const near = { location: 0, scale: 1 };
    const far = { location: 6, scale: 0.5 };
    const experiment = staircase(20, 1, 0);
    const question = { p: 0.5, level: 0.95, tail: 'both' } as const;
    const warm = simulatedCriticals(experiment, normal, { seed: 2, each: 2000 }, [near]);
    const cold = simulatedCriticals(experiment, normal, { seed: 3, each: 2000 });
    const at = (criticals: typeof warm) => criticals({ ...question, y: 6, strength: far });
    expect(Math.abs(at(warm) - at(cold))).toBeLessThan(0.25);
  });
});
