import { expect, test } from 'vitest';
import {
  interlaboratoryPrecision,
  precisionIntervals,
} from '../../../src/statistics/interlaboratory/precision.ts';
import { randomStream } from '../../../src/statistics/random/random-stream.ts';
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

test('a negative variance between laboratories is reported as it comes out', () => {
  const found = interlaboratoryPrecision([
    [0, 10],
    [1, 9],
  ]);
  expect(found.betweenVariance).toBeLessThan(0);
  expect(found.reproducibilityDeviation).toBe(found.repeatabilityDeviation);
});

test('the interval of reproducibility holds in about 95 % of simulated studies', () => {
  let held = 0;
  const studies = 1500;
  for (let i = 0; i < studies; i++) {
    const random = randomStream(5725, i);
    const laboratories = Array.from({ length: 8 }, () => {
      const own = random.normal();
      return Array.from({ length: 3 }, () => own + 0.7 * random.normal());
    });
    const { reproducibility } = precisionIntervals(laboratories, 0.95);
    if (reproducibility.lower <= 1.49 && reproducibility.upper >= 1.49) held++;
  }
  // Monte Carlo error 0.6 points.
  expect(held / studies).toBeGreaterThan(0.93);
  expect(held / studies).toBeLessThan(0.975);
});
