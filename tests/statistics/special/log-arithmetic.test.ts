import { expect, it } from 'vitest';
import { logDifference, logOneMinusExp } from '../../../src/statistics/special/log-arithmetic.ts';
import { relativeError } from './table.ts';

// Expected: series by hand, log(1 − e^−ε) = log ε − ε/2 + …, and log(1 − e^−x) = −e^−x − … for large x.
it('log(1 − eˣ) keeps its digits at both ends', () => {
  expect(relativeError(logOneMinusExp(-1e-20), -20 * Math.LN10)).toBeLessThan(1e-15);
  expect(relativeError(logOneMinusExp(-100), -Math.exp(-100))).toBeLessThan(1e-15);
  expect(relativeError(logOneMinusExp(-Math.LN2), -Math.LN2)).toBeLessThan(1e-15);
  expect(logOneMinusExp(0)).toBe(-Infinity);
  expect(logOneMinusExp(0.1)).toBeNaN();
});

it('log(eᵃ − eᵇ) works where eᵃ itself is no double', () => {
  expect(relativeError(logDifference(-5000, -5000 - Math.LN2), -5000 - Math.LN2)).toBeLessThan(1e-15);
  expect(logDifference(-3, -Infinity)).toBe(-3);
  expect(logDifference(-3, -3)).toBe(-Infinity);
  expect(logDifference(-Infinity, -Infinity)).toBe(-Infinity);
  expect(logDifference(-4, -3)).toBeNaN();
});
