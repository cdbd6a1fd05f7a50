import { expect, test } from 'vitest';
import {
  classicalLimitCaveat,
  effectiveDegrees,
  MEASURED_COVERAGE,
  spreadBiasFactor,
} from '../../../src/statistics/tolerance/up-and-down-limit.ts';
import sen13 from '../../reference/sen-13/SEN-13-mc-lower-percentile-bounds.json' with { type: 'json' };

test('SEN-13 (Monte Carlo, computed): the table in the source is the measured one', () => {
  const lines = sen13.data.k_factor.filter((c) => c.p === 0.9);
  expect(lines).toHaveLength(MEASURED_COVERAGE.length);
  for (const line of lines) {
    const ours = MEASURED_COVERAGE.find((c) => c.drops === line.n && c.step === line.d_over_sigma)!;
    expect(Math.abs(ours.plain - line.cov_k_n)).toBeLessThanOrEqual(0.0005);
    expect(Math.abs(ours.mended - line.cov_k_n_SL)).toBeLessThanOrEqual(0.0005);
  }
});

test('factor and degrees of freedom (formulas by hand)', () => {
  expect(spreadBiasFactor(30)).toBeCloseTo(30 / 27, 14);
  expect(() => spreadBiasFactor(3)).toThrow(RangeError);
  expect(effectiveDegrees(30)).toBeCloseTo(3.896, 3);
});

test('the sentence carries the measured figures of the nearest number of drops', () => {
  const sentence = classicalLimitCaveat(28, false);
  expect(sentence).toContain('held in 56, 66 and 84 of 100 simulated tests of 30 drops');
  expect(sentence).toContain('about 3.6 degrees of freedom, not 27');
  expect(classicalLimitCaveat(28, true)).toContain('held in 64, 76 and 93');
});
