import { expect, it } from 'vitest';
import { continuedFraction } from '../../../src/statistics/special/continued-fraction.ts';

// The golden ratio, and Lambert's fraction of the tangent.
it('has known values', () => {
  const one = () => 1;
  expect(continuedFraction(one, one)).toBeCloseTo((1 + Math.sqrt(5)) / 2, 15);
  // tan 1 = 1/(1 − 1/(3 − 1/(5 − …)))
  expect(
    1 /
      continuedFraction(
        () => -1,
        (k) => 2 * k + 1,
      ),
  ).toBeCloseTo(Math.tan(1), 14);
});
