import { expect, test } from 'vitest';
import {
  knownShapeLife,
  knownShapeLower,
  knownShapeSize,
  lifeAtShare,
} from '../../../src/statistics/demonstration/known-shape.ts';
import {
  confidenceShown,
  demonstrationSize,
  reliabilityShown,
  successRunSize,
} from '../../../src/statistics/demonstration/success-run.ts';
import { expectWhole, titleOf } from '../../reference/published.ts';
import runs from '../../reference/zf-01/ZF-01-success-run.json' with { type: 'json' };
import few from '../../reference/zf-02/ZF-02-few-failures.json' with { type: 'json' };
import shape from '../../reference/zf-05/ZF-05-known-shape.json' with { type: 'json' };

const numbersIn = (name: string) => [...name.matchAll(/[RCr]=([\d.]+)/g)].map((match) => Number(match[1]));

test(titleOf(runs), () => {
  const found = runs.expected.map(({ name }) => {
    const [R, C] = numbersIn(name) as [number, number];
    return [name, successRunSize(R, C)];
  });
  expectWhole(runs, Object.fromEntries(found));
});

test(titleOf(few), () => {
  const found = few.expected.map(({ name }) => {
    const [R, C, r] = numbersIn(name) as [number, number, number];
    return [name, demonstrationSize(R, C, r)];
  });
  expectWhole(few, Object.fromEntries(found));
});

test(titleOf(shape), () => {
  const { n, distance_km_each: km, beta } = shape.data;
  const found: Record<string, number | null> = {};
  for (const failures of shape.data.failures) {
    const lives = Array.from({ length: n }, (_, i) => ({ time: km, failed: i < failures }));
    for (const C of [0.9, 0.95]) {
      const lower = knownShapeLower(lives, beta, C);
      found[`eta lower, r=${failures}, C=${C}`] = lower;
      found[`B10 lower, r=${failures}, C=${C}`] = lifeAtShare(lower, beta, 0.1);
    }
  }
  const one = Array.from({ length: n }, (_, i) => ({ time: km, failed: i < 1 }));
  found['Known-shape line zero failures (r replaced by 1): eta'] = knownShapeLife(one, beta);
  for (const times of [1, 1.5, 2])
    found[`tyres for 90/90 when each runs ${times} x target, beta=2`] = knownShapeSize(0.9, 0.9, times, 2);
  expectWhole(shape, found);
});

test('what a finished demonstration shows', () => {
  // 22 without a failure show 90/90, 21 do not (ZF-01); by hand 0.1^(1/22) = 0.90063.
  expect(reliabilityShown(0, 22, 0.9)).toBeCloseTo(0.90063, 5);
  expect(confidenceShown(0, 22, 0.9)).toBeGreaterThan(0.9);
  expect(confidenceShown(0, 21, 0.9)).toBeLessThan(0.9);
  expect(confidenceShown(3, 3, 0.9)).toBe(0);
  expect(knownShapeLife([{ time: 5, failed: false }], 2)).toBeNull();
});

test('shares that are none are refused', () => {
  expect(() => successRunSize(1, 0.9)).toThrow('reliability 1');
  expect(() => demonstrationSize(0.9, 0.9, -1)).toThrow('-1 is no number');
  expect(() => knownShapeLower([{ time: 0, failed: false }], 2, 0.9)).toThrow('no time on test');
});
