import { expect, test } from 'vitest';
import {
  interlaboratoryPrecision,
  laboratoryConsistency,
} from '../../../src/statistics/interlaboratory/precision.ts';
import reference from '../../reference/ils-02/ILS-02-iso5725-coal.json' with { type: 'json' };
import { expectWhole, titleOf } from '../../reference/published.ts';

test(titleOf(reference), () => {
  const found = interlaboratoryPrecision(reference.data.labs);
  expectWhole(reference, {
    m: found.mean,
    s_r: found.repeatabilityDeviation,
    s_L: Math.sqrt(found.betweenVariance),
    s_R: found.reproducibilityDeviation,
    nbar: found.effectiveReplicates,
  });
  expect(found.reproducibilityLimit).toBeCloseTo(2.8 * found.reproducibilityDeviation, 12);
});

// By hand: means 1, 2, 3 (h −1, 0, 1), variances 2, 2, 8 (pooled 4).
test("Mandel's h and k", () => {
  const found = laboratoryConsistency([
    [0, 2],
    [1, 3],
    [1, 5],
  ]);
  expect(found.map((one) => one.h)).toEqual([-1, 0, 1]);
  expect(found.map((one) => one.k)).toEqual([Math.sqrt(0.5), Math.sqrt(0.5), Math.sqrt(2)]);
  expect(laboratoryConsistency([[1], [2, 4]])[0]!.k).toBeNull();
});

test('a negative variance between laboratories is reported as it comes out', () => {
  const found = interlaboratoryPrecision([
    [0, 10],
    [1, 9],
  ]);
  expect(found.betweenVariance).toBeLessThan(0);
  expect(found.reproducibilityDeviation).toBe(found.repeatabilityDeviation);
});
