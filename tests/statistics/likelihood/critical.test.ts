import { expect, test } from 'vitest';
import { likelihoodRatioCritical, normalCritical } from '../../../src/statistics/likelihood/critical.ts';

// Handbook values: chi-squared with 1 degree of freedom 3.841459 (95 %), 2.705543 (90 %), 6.634897 (99 %); normal 1.959964
// and 1.644854. NIST/SEMATECH e-Handbook 1.3.6.7.4 and 1.3.6.7.1, from memory.
test('two-sided and one-sided critical values', () => {
  expect(likelihoodRatioCritical(0.95, 2)).toBeCloseTo(3.841459, 6);
  expect(likelihoodRatioCritical(0.95, 1)).toBeCloseTo(2.705543, 6);
  expect(likelihoodRatioCritical(0.99, 2)).toBeCloseTo(6.634897, 6);
  expect(normalCritical(0.95, 2)).toBeCloseTo(1.959964, 6);
  expect(normalCritical(0.95, 1)).toBeCloseTo(1.644854, 6);
});

test('one-sided C is two-sided 2C − 1', () => {
  expect(likelihoodRatioCritical(0.9, 1)).toBeCloseTo(likelihoodRatioCritical(0.8, 2), 12);
});

test.each([
  [0, 2],
  [1, 2],
  [0.5, 1],
  [Number.NaN, 2],
] as const)('confidence %d with %d sides is refused', (level, sides) => {
  expect(() => likelihoodRatioCritical(level, sides)).toThrow(RangeError);
});
