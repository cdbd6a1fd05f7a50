import { expect, test } from 'vitest';
import { growingDepths, wearCrossing } from '../../../src/statistics/wear/limit-crossing.ts';
import { expectWhole, titleOf } from '../../reference/published.ts';
import own from '../../reference/wear-01/WEAR-01-own.json' with { type: 'json' };
import flat from '../../reference/wear-02/WEAR-02-flat.json' with { type: 'json' };

const readingsOf = ({ distance_km, depth_mm }: { distance_km: number[]; depth_mm: number[] }) =>
  distance_km.map((distance, i) => ({ distance, depth: depth_mm[i]! }));

test(titleOf(own), () => {
  const readings = readingsOf(own.data);
  const single = wearCrossing(readings, own.data.limit_mm, 'reading', 0.95);
  const mean = wearCrossing(readings, own.data.limit_mm, 'mean-line', 0.95);
  expectWhole(own, {
    x0: single.crossing!.value,
    se_cal: single.crossing!.standardError,
    se_reg: mean.crossing!.standardError,
    g: single.crossing!.g,
    a: single.line.intercept,
    b: single.line.slope,
    s: single.line.residualDeviation,
    'calibration limit 0': single.crossing!.lower,
    'calibration limit 1': single.crossing!.upper,
    'mean-line limit 0': mean.crossing!.lower,
    'mean-line limit 1': mean.crossing!.upper,
  });
  // The case's note: 1.66 times the longest distance.
  expect(single.extrapolation).toBeCloseTo(1.66, 2);
  expect(single.why).toBeNull();
});

test(titleOf(flat), () => {
  const found = wearCrossing(readingsOf(flat.data), flat.data.limit_mm, 'mean-line', 0.95);
  expectWhole(flat, { slope: found.line.slope, g: found.crossing!.g });
  expect(found).toMatchObject({ why: 'slope-not-significant' });
  expect(found.crossing).toMatchObject({ kind: 'unbounded', lower: null, upper: null });
});

test('a depth that does not fall has no crossing', () => {
  const rising = [0, 100, 200].map((distance, i) => ({ distance, depth: 3 + 0.1 * i }));
  expect(wearCrossing(rising, 1, 'mean-line', 0.95)).toMatchObject({ crossing: null, why: 'not-falling' });
});

test('a point that moved is told by its place', () => {
  const readings = [3, 2.9, 3.4, 2.7].map((depth, i) => ({ distance: 100 * i, depth }));
  expect(growingDepths(readings, 0.02)).toEqual([2]);
  expect(growingDepths(readings, 0.5)).toEqual([]);
});
