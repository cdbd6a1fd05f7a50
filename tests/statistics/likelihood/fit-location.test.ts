import { expect, test } from 'vitest';
import { laws } from '../../../src/statistics/laws/laws.ts';
import { fitLocation } from '../../../src/statistics/likelihood/fit-location.ts';
import { gatherObservations } from '../../../src/statistics/likelihood/observation.ts';
import { expectRelative } from '../../reference/likelihood/case.ts';

const exact = (values: readonly number[]) =>
  gatherObservations(
    values.map((x) => ({ lower: x, upper: x, count: 1 })),
    'identity',
  );

// Dixon's 124 values, the other use of it: up-and-down/small-sample.test.ts.
test('exact normal values: the mean, with σ/√n (closed form)', () => {
  const found = fitLocation(exact([31.2, 44.7, 52.9, 38.4, 61.3]), laws.normal.standard, 10)!;
  expectRelative(found.location, 45.7, 1e-13);
  expectRelative(found.standardError, 10 / Math.sqrt(5), 1e-13);
});

test('exact smallest extremes: exp(location/σ) is the mean of exp(x/σ) (closed form)', () => {
  const values = [1.2, 2.7, 2.9, 3.4];
  const scale = 0.7;
  const mean = values.reduce((sum, x) => sum + Math.exp(x / scale), 0) / values.length;
  const found = fitLocation(exact(values), laws.weibull.standard, scale)!;
  expectRelative(found.location, scale * Math.log(mean), 1e-13);
  expectRelative(found.standardError, scale / 2, 1e-12);
});

test('as many failures as survivals at one level: the level itself', () => {
  const sample = gatherObservations(
    [
      { lower: -Infinity, upper: 450, count: 3 },
      { lower: 450, upper: Infinity, count: 3 },
    ],
    'identity',
  );
  expect(fitLocation(sample, laws.normal.standard, 25)!.location).toBeCloseTo(450, 9);
});

// A search that begins e^700 and more away from the maximum, where slopes are no numbers.
test.each([1e-3, 1e-4, 1e3])('a scale of %d of the spread of the data does not lose the way', (scale) => {
  const values = [1.2, 2.7, 2.9, 3.4];
  const found = fitLocation(exact(values), laws.weibull.standard, scale)!;
  // log-sum-exp of the closed form above
  const expected =
    3.4 + scale * Math.log(values.reduce((sum, x) => sum + Math.exp((x - 3.4) / scale), 0) / 4);
  expectRelative(found.location, expected, 1e-10);
});
