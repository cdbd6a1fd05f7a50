import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { intervalTerm, logIntervalProbability } from '../../../src/statistics/laws/interval.ts';
import { logistic } from '../../../src/statistics/laws/logistic.ts';
import { normal } from '../../../src/statistics/laws/normal.ts';
import { smallestExtremeValue } from '../../../src/statistics/laws/smallest-extreme-value.ts';
import { readTable, worst } from '../special/table.ts';

const byName = { 0: normal, 1: logistic, 2: smallestExtremeValue };

describe('log(F(b) − F(a))', () => {
  // mpmath with 60 digits and more, tests/reference/scripts/special-tables.py; measured 8e-16 at worst.
  it('keeps its digits in both tails, across the median and over narrow intervals', () => {
    const rows = readTable('intervals');
    const found = ({ law, a, b }: Record<string, number>) =>
      logIntervalProbability(byName[law as 0 | 1 | 2], a!, b!);
    expect(worst(rows, 'logProbability', found)).toBeLessThan(5e-15);
  });

  it('is log F or log S with an infinite end, and −∞ for an empty interval', () => {
    for (const law of Object.values(byName)) {
      expect(logIntervalProbability(law, -Infinity, 0.3)).toBe(law.logCdf(0.3));
      expect(logIntervalProbability(law, 0.3, Infinity)).toBe(law.logSf(0.3));
      expect(logIntervalProbability(law, 0.3, 0.3)).toBe(-Infinity);
      expect(logIntervalProbability(law, 0.4, 0.3)).toBeNaN();
    }
  });

  it('has the derivatives of difference quotients', () => {
    const end = fc.double({ min: -5, max: 2, noNaN: true });
    const h = 1e-5;
    fc.assert(
      fc.property(end, fc.double({ min: 0.1, max: 3, noNaN: true }), (a, width) => {
        const b = a + width;
        for (const law of Object.values(byName)) {
          const at = (x: number, y: number) =>
            intervalTerm(law, x, y, {
              value: 0,
              lowerSlope: 0,
              upperSlope: 0,
              lowerCurvature: 0,
              upperCurvature: 0,
              cross: 0,
            });
          const term = at(a, b);
          const size = 1e-6 * (1 + term.lowerSlope ** 2 + term.upperSlope ** 2 + Math.abs(term.value)) * 10;
          const quotient = (key: keyof typeof term, dx: number, dy: number) =>
            (at(a + dx, b + dy)[key] - at(a - dx, b - dy)[key]) / (2 * h);
          expect(Math.abs(term.lowerSlope - quotient('value', h, 0))).toBeLessThan(size);
          expect(Math.abs(term.upperSlope - quotient('value', 0, h))).toBeLessThan(size);
          expect(Math.abs(term.lowerCurvature - quotient('lowerSlope', h, 0))).toBeLessThan(size);
          expect(Math.abs(term.upperCurvature - quotient('upperSlope', 0, h))).toBeLessThan(size);
          expect(Math.abs(term.cross - quotient('lowerSlope', 0, h))).toBeLessThan(size);
        }
      }),
    );
  });
});
