import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { incompleteGamma } from '../../../src/statistics/special/incomplete-gamma.ts';
import { readTable, relativeError, worst } from './table.ts';

describe('incomplete gamma', () => {
  // mpmath with up to 340 digits, tests/reference/scripts/special-tables.py: a from 0.01 to 20 000, tails down to e^−600.
  // Measured 4.5e-14 below and 1.7e-13 above: the logarithm of a tail of e^−470 has an absolute rounding of 1e-13.
  const rows = readTable('incomplete-gamma');
  it('has both tails as 60 digits have them', () => {
    expect(worst(rows, 'logLower', ({ a, x }) => incompleteGamma(a!, x!).logLower)).toBeLessThan(1e-13);
    expect(worst(rows, 'logUpper', ({ a, x }) => incompleteGamma(a!, x!).logUpper)).toBeLessThan(3e-13);
  });

  it('is 1 − e^−x at shape 1', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-300, max: 600, noNaN: true }), (x) => {
        expect(relativeError(incompleteGamma(1, x).lower, -Math.expm1(-x))).toBeLessThan(1e-13);
        expect(relativeError(incompleteGamma(1, x).upper, Math.exp(-x))).toBeLessThan(1e-13);
      }),
    );
  });

  it('obeys Q(a + 1, x) = Q(a, x) + xᵃe⁻ˣ/Γ(a + 1)', () => {
    // DLMF 8.8.6; the factor for a = 4 by hand
    for (const x of [0.1, 1, 4, 9, 30]) {
      const step = (x ** 4 * Math.exp(-x)) / 24;
      const sum = incompleteGamma(4, x).upper + step;
      expect(relativeError(incompleteGamma(5, x).upper, sum)).toBeLessThan(1e-13);
    }
  });

  it('has certain ends and no value outside', () => {
    expect(incompleteGamma(2, 0)).toMatchObject({ lower: 0, upper: 1 });
    expect(incompleteGamma(2, Infinity)).toMatchObject({ lower: 1, upper: 0 });
    expect(incompleteGamma(0, 1).lower).toBeNaN();
    expect(incompleteGamma(2, -1).upper).toBeNaN();
  });
});
