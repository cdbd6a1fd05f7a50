import { describe, expect, it } from 'vitest';
import { logGamma, logGammaOnePlus } from '../../../src/statistics/special/log-gamma.ts';
import { readTable, relativeError, worst } from './table.ts';

describe('log gamma', () => {
  // mpmath with 60 digits, tests/reference/scripts/special-tables.py; measured 3.5e-16, also beside the zeros at 1 and 2.
  it('agrees with 60 digits from 1e-300 to 1e100', () => {
    expect(worst(readTable('log-gamma'), 'logGamma', ({ x }) => logGamma(x!))).toBeLessThan(1e-15);
  });

  it('is the log of a factorial', () => {
    expect(relativeError(logGamma(21), Math.log(2432902008176640000))).toBeLessThan(1e-15);
    expect(logGammaOnePlus(0)).toBe(0);
  });

  it('keeps the slope −γ at 1 for an argument no sum would hold', () => {
    // Euler's constant, Abramowitz & Stegun 6.1.3
    expect(relativeError(logGammaOnePlus(1e-30), -0.5772156649015329e-30)).toBeLessThan(1e-15);
  });

  it('has no value below 0 and none that is finite at 0', () => {
    expect(logGamma(-0.5)).toBeNaN();
    expect(logGamma(0)).toBe(Infinity);
  });
});
