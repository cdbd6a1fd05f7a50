import { expect, test } from 'vitest';
import { curveQuantile } from '../../../src/statistics/isotonic/curve-quantile.ts';

const curve = [
  { level: 100, share: 0.1, drops: 5 },
  { level: 200, share: 0.5, drops: 5 },
  { level: 300, share: 0.5, drops: 5 },
  { level: 400, share: 0.9, drops: 5 },
];

test('straight lines between corners; the middle of a flat stretch (by hand)', () => {
  expect(curveQuantile(curve, 0.3).value).toBeCloseTo(150, 10);
  expect(curveQuantile(curve, 0.5).value).toBe(250);
  expect(curveQuantile(curve, 0.7).value).toBeCloseTo(350, 10);
  expect(curveQuantile(curve, 0.1).value).toBe(100);
});

test('nothing is extrapolated', () => {
  expect(curveQuantile(curve, 0.05).why).toBe('the share failed is above 5 % at the lowest level already');
  expect(curveQuantile(curve, 0.95).why).toBe('the share failed does not reach 95 % at any level');
  expect(curveQuantile([], 0.5).why).toBe('there are no drops');
});
