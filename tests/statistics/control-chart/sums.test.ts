import { expect, test } from 'vitest';
import { bridgeBatches } from '../../../src/statistics/control-chart/bridge.ts';
import { stepChange } from '../../../src/statistics/control-chart/change-point.ts';
import { cusumChart, shiftStart } from '../../../src/statistics/control-chart/cusum.ts';
import { findDrift } from '../../../src/statistics/control-chart/drift.ts';
import { ewmaChart, ewmaHalfWidth } from '../../../src/statistics/control-chart/ewma.ts';
import ewma from '../../reference/ctl-02/CTL-02-nist-ewma.json' with { type: 'json' };
import cusum from '../../reference/ctl-03/CTL-03-nist-cusum.json' with { type: 'json' };
import { expectWhole, titleOf } from '../../reference/published.ts';

test(titleOf(ewma), () => {
  const { x, lambda, ewma0, s } = ewma.data;
  const design = { target: ewma0, sigma: s, weight: lambda, width: 3 };
  const points = ewmaChart(x, design);
  const half = ewmaHalfWidth(design, Infinity);
  const found: Record<string, number> = { UCL: ewma0 + half, LCL: ewma0 - half };
  for (const [i, point] of points.entries()) {
    found[`EWMA ${i + 1}`] = point.value;
    if ([1, 2, 3, 5].includes(i + 1)) found[`exact (start-up) UCL at t=${i + 1}`] = point.upper;
  }
  expectWhole(ewma, found);
  expect(points.some((point) => point.signal)).toBe(false);
});

test(titleOf(cusum), () => {
  const { x, target, k, h } = cusum.data;
  const design = { target, allowance: k, decision: h };
  const points = cusumChart(x, design);
  const found: Record<string, number> = {
    'first signal at group': points.findIndex((point) => point.signal !== null) + 1,
    'cumulative sum of deviations at 20': x.reduce((sum, value) => sum + value - target, 0),
  };
  for (const [i, point] of points.entries()) {
    found[`Shi ${i + 1}`] = point.high;
    found[`Slo ${i + 1}`] = point.low;
  }
  expectWhole(cusum, found);
  // Groups 13 and on lie near 327.7; by the tabular sum 13 is the first shifted: 325 + 0.3175 + 4.94/2.
  const start = shiftStart(points, design)!;
  expect(start).toMatchObject({ direction: 'high', signal: 13, start: 12 });
  expect(start.level).toBeCloseTo(325 + 0.3175 + 4.94 / 2, 9);
  expect(stepChange(x.slice(0, 14), target, 0.635)).toMatchObject({ start: 12, from: 12, to: 12 });
});

test('without a signal there is no start of a shift', () => {
  const design = { target: 0, allowance: 0.5, decision: 5 };
  expect(shiftStart(cusumChart([0.1, -0.2, 0.3], design), design)).toBeNull();
});

test('a chart without a sound design is refused', () => {
  expect(() => ewmaChart([1], { target: 0, sigma: 1, weight: 0, width: 3 })).toThrow('weight 0');
  expect(() => ewmaChart([1], { target: 0, sigma: 0, weight: 0.2, width: 3 })).toThrow(
    'standard deviation 0',
  );
  expect(() => cusumChart([1], { target: 0, allowance: -1, decision: 4 })).toThrow('no chart');
});

test('a drift is found with two readings of its start', () => {
  const { x, target } = cusum.data;
  // k = 0.3175 and h = 4.1959 in standard deviations of 0.635.
  const drift = findDrift(x, target, 0.635, { allowance: 0.5, decision: 4.1959 / 0.635 });
  expect(drift.shift).toMatchObject({ signal: 13, start: 12 });
  expect(drift.step).toMatchObject({ start: 12 });
  expect(findDrift(x.slice(0, 12), target, 0.635)).toMatchObject({ shift: null, step: null });
});

// By hand: the new batch reads 1 higher on every occasion but for ± 0.1.
test('batches read on the same occasions are bridged by their differences', () => {
  const old = [10, 12, 14, 16];
  const fresh = [11.1, 12.9, 15.1, 16.9];
  const paired = bridgeBatches(old, fresh, 'paired', 0.95);
  expect(paired.difference).toBeCloseTo(1, 12);
  // Standard deviation 0.11547, over √4.
  expect(paired.standardError).toBeCloseTo(0.057735, 6);
  expect(bridgeBatches(old, fresh, 'separate', 0.95).standardError).toBeGreaterThan(1);
});
