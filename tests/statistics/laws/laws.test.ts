import { expect, it } from 'vitest';
import { laws } from '../../../src/statistics/laws/laws.ts';

// The four laws at known points: textbook values. Weibull of shape β at its characteristic life: 1 − 1/e.
it('names each law with its standard form and its scale', () => {
  expect(laws.normal.standard.cdf(1.959963984540054)).toBeCloseTo(0.975, 15);
  expect(laws.lognormal).toEqual({ standard: laws.normal.standard, scale: 'log' });
  expect(laws.logistic.standard.cdf(Math.log(3))).toBeCloseTo(0.75, 15);
  expect(laws.logistic.scale).toBe('identity');
  expect(laws.weibull.standard.cdf(0)).toBeCloseTo(1 - 1 / Math.E, 15);
  expect(laws.weibull.scale).toBe('log');
});
