import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { incompleteBeta } from '../../../src/statistics/special/incomplete-beta.ts';
import { readTable, relativeError, worst } from './table.ts';

describe('incomplete beta', () => {
  // mpmath with 340 digits, tests/reference/scripts/special-tables.py: shapes 0.5 to 2000, tails down to e^−650.
  // Measured 4.7e-14 below, 6.3e-14 above.
  const rows = readTable('incomplete-beta');
  it('has both tails as 60 digits have them', () => {
    expect(worst(rows, 'logLower', ({ a, b, x }) => incompleteBeta(a!, b!, x!).logLower)).toBeLessThan(1e-13);
    expect(worst(rows, 'logUpper', ({ a, b, x }) => incompleteBeta(a!, b!, x!).logUpper)).toBeLessThan(1e-13);
  });

  it('I_0.3(2, 3) = 0.3483', () => {
    // By hand: 6x² − 8x³ + 3x⁴ at 0.3
    expect(relativeError(incompleteBeta(2, 3, 0.3).lower, 0.3483)).toBeLessThan(1e-15);
  });

  it('is xᵃ for b = 1, and mirrored for a = 1', () => {
    const shape = fc.double({ min: 0.5, max: 50, noNaN: true });
    fc.assert(
      fc.property(shape, fc.double({ min: 1e-6, max: 0.999, noNaN: true }), (a, x) => {
        expect(relativeError(incompleteBeta(a, 1, x).lower, x ** a)).toBeLessThan(3e-13);
        const mirrored = incompleteBeta(1, a, x);
        expect(relativeError(mirrored.logUpper, a * Math.log1p(-x))).toBeLessThan(1e-12);
        expect(mirrored.lower + mirrored.upper).toBeCloseTo(1, 15);
      }),
    );
  });

  it('has certain ends and no value outside', () => {
    expect(incompleteBeta(2, 3, 0)).toMatchObject({ lower: 0, upper: 1 });
    expect(incompleteBeta(2, 3, 1)).toMatchObject({ lower: 1, upper: 0 });
    expect(incompleteBeta(2, 3, 1.1).lower).toBeNaN();
    expect(incompleteBeta(0, 3, 0.5).lower).toBeNaN();
  });
});
