// Rounding to a number of decimals: by hand.
import { describe, expect, it } from 'vitest';
import { amount, decimalsToTell, fixed, percent, plain, written } from '../../src/quantity/amount.ts';

describe('amount', () => {
  it('sets the unit behind the number, and none behind a dimensionless one', () => {
    expect(amount(41.26, 1, 'J')).toBe('41.3 J');
    expect(amount(0.1701, 3, '1')).toBe('0.170');
  });
});

describe('fixed', () => {
  it('has no minus nought and no endless digits', () => {
    expect(fixed(-0.004, 2)).toBe('0.00');
    expect(fixed(-0.4, 0)).toBe('0');
    expect(fixed(1e300, 2)).toBe('1.000e+300');
    expect(fixed(Number.NaN, 2)).toBe('—');
  });
});

describe('plain, written and percent', () => {
  it('hide what binary fractions add', () => {
    expect(plain(0.1 + 0.2)).toBe('0.3');
    expect(written(900 * 1.05, 'g')).toBe('945 g');
    expect(percent(0.07)).toBe('7 %');
    expect(percent(0.999)).toBe('99.9 %');
  });
});

describe('decimalsToTell', () => {
  it('goes as fine as it takes to tell a value from a limit', () => {
    expect(decimalsToTell(44.98, 45, 0)).toBe(2);
    expect(decimalsToTell(44.9996, 45, 1)).toBe(4);
    expect(decimalsToTell(45, 45, 1)).toBe(1);
    expect(decimalsToTell(41, 45, 1)).toBe(1);
  });
});
