import { describe, expect, it } from 'vitest';
import { isTabulated, tabulatedCriticals } from '../../../src/statistics/calibration/tabulated-criticals.ts';
import { normal } from '../../../src/statistics/laws/normal.ts';
import reference from '../../reference/calibration/critical.json' with { type: 'json' };

const TAILS = ['both', 'above', 'below'] as const;

describe('tabulatedCriticals', () => {
  // tests/reference/scripts/calibration-critical.R: simulated in R, probit fits by glm, 20,000 tests a case. Roots of so few
  // drops are discrete: between the points of the table a root may move by a jump, and coverage hardly.
  it.each(reference.cases)(
    'agrees with R: $drops drops, spread $scale steps, start $offset steps off, p $p',
    (found) => {
      const criticals = tabulatedCriticals({ drops: found.drops, start: found.offset, step: 1 });
      const strength = { location: -found.scale * normal.quantile(found.p), scale: found.scale };
      for (const tail of TAILS) {
        [0.9, 0.95].forEach((level, i) => {
          const root = criticals({ p: found.p, y: 0, strength, level, tail });
          expect(Math.abs(root - found[tail][i]!)).toBeLessThan(0.33);
        });
      }
      const both = criticals({ p: found.p, y: 0, strength, level: 0.95, tail: 'both' });
      expect(Math.abs(both - found.both[1]!)).toBeLessThan(0.14);
    },
  );

  it('goes to χ² as the drops grow: 1.96 and 1.645', () => {
    const criticals = tabulatedCriticals({ drops: 1e6, start: 0, step: 1 });
    const question = { p: 0.5, y: 0, strength: { location: 0, scale: 1 }, level: 0.95 };
    expect(criticals({ ...question, tail: 'both' })).toBeCloseTo(1.959964, 3);
    expect(criticals({ ...question, tail: 'above' })).toBeCloseTo(1.644854, 3);
  });

  it('mirrors above and below with the start, at the median of a symmetric law', () => {
    const at = (start: number) => tabulatedCriticals({ drops: 20, start, step: 1 });
    for (const start of [0.5, 1.25, 2.6]) {
      const question = { p: 0.5, y: 0, strength: { location: 0, scale: 1.2 }, level: 0.95 };
      const above = at(start)({ ...question, tail: 'above' });
      const below = at(-start)({ ...question, tail: 'below' });
      expect(Math.abs(above - below)).toBeLessThan(0.09);
    }
  });

  it('is continuous over whole steps beyond its range', () => {
    const question = {
      p: 0.5,
      y: 0,
      strength: { location: 0, scale: 2 },
      level: 0.95,
      tail: 'both',
    } as const;
    const at = (start: number) => tabulatedCriticals({ drops: 50, start, step: 1 })(question);
    expect(Math.abs(at(8.01) - at(7.99))).toBeLessThan(0.25);
    expect(at(12.4)).toBe(at(10.4));
  });

  it('says what it has', () => {
    expect(isTabulated(30, 0.1, 0.95)).toBe(true);
    expect(isTabulated(9, 0.5, 0.95)).toBe(false);
    expect(isTabulated(30, 0.05, 0.95)).toBe(false);
    expect(isTabulated(30, 0.5, 0.99)).toBe(false);
  });
});
