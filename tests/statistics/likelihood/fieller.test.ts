import { expect, test } from 'vitest';
import { laws } from '../../../src/statistics/laws/laws.ts';
import { normalCritical } from '../../../src/statistics/likelihood/critical.ts';
import { expectedCovariance } from '../../../src/statistics/likelihood/expected-information.ts';
import { fiellerQuantile } from '../../../src/statistics/likelihood/fieller.ts';
import { type Fit, fitLocationScale } from '../../../src/statistics/likelihood/fit.ts';
import { gatherObservations } from '../../../src/statistics/likelihood/observation.ts';
import { drops, expectRelative, quantal } from '../../reference/likelihood/case.ts';
import sen19 from '../../reference/sen-19/SEN-19-mle-existence-tiny-sets.json' with { type: 'json' };

const z95 = normalCritical(0.95, 2);
const sample = gatherObservations(quantal([1, 2, 3, 4], [12, 12, 12, 12], [1, 3, 8, 11]), 'identity');
const fit = fitLocationScale(sample, laws.logistic.standard) as Fit;

// Published limits of SEN-01, 02, 15, 16, 18: published-cases.test.ts.
test('an end is where the estimated η + b·t differs from F⁻¹(p) by the critical number of its errors', () => {
  const { location, scale, covariance } = fit;
  const z = Math.log(0.2 / 0.8);
  const { lower, upper, g } = fiellerQuantile(fit, laws.logistic, 0.2, z95);
  expect(g).toBeLessThan(1);
  for (const t of [lower!, upper!]) {
    // (t − location)/scale, its error by the delta method
    const at = (t - location) / scale;
    const variance =
      (covariance.location + 2 * at * covariance.cross + at * at * covariance.scale) / scale ** 2;
    expectRelative(Math.abs(at - z) / Math.sqrt(variance), z95, 1e-10);
  }
});

test('g at or above 1 has no ends (SEN-19, overlap_min)', () => {
  const { levels, fail } = sen19.data.sets.overlap_min;
  const flat = fitLocationScale(
    gatherObservations(drops(levels, fail), 'identity'),
    laws.normal.standard,
  ) as Fit;
  const { lower, upper, g } = fiellerQuantile(flat, laws.normal, 0.5, z95);
  expect(g).toBeGreaterThan(1);
  expect([lower, upper]).toEqual([null, null]);
});

test('expected and observed information are the same for the logistic law and hits (canonical link)', () => {
  const expected = expectedCovariance(sample, laws.logistic.standard, fit);
  expectRelative(expected.location, fit.covariance.location, 1e-9);
  expectRelative(expected.cross, fit.covariance.cross, 1e-9);
  expectRelative(expected.scale, fit.covariance.scale, 1e-9);
});

test('the expected information of a closed interval is refused', () => {
  const closed = gatherObservations([{ lower: 1, upper: 2, count: 1 }], 'identity');
  expect(() => expectedCovariance(closed, laws.normal.standard, fit)).toThrow(RangeError);
});
