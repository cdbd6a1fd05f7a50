import { expect, test } from 'vitest';
import { maximiseConcave } from '../../../src/statistics/likelihood/maximise.ts';

test('a parabola in one step and its check', () => {
  let calls = 0;
  const found = maximiseConcave(
    (x, into) => {
      calls++;
      into.value = -((x - 3) ** 2);
      into.slope = -2 * (x - 3);
      into.curvature = -2;
    },
    2,
    -Infinity,
    10,
  );
  expect(found.at).toBeCloseTo(3, 12);
  expect(found.value).toBeCloseTo(0, 12);
  expect(calls).toBeLessThanOrEqual(3);
});

// log x − x, the shape of a likelihood in 1/scale: maximum −1 at 1, slope without bound at 0.
test.each([1e-30, 0.5, 1, 40, 1e12])('log x − x above 0 from %d', (start) => {
  const found = maximiseConcave(
    (x, into) => {
      into.value = Math.log(x) - x;
      into.slope = 1 / x - 1;
      into.curvature = -1 / (x * x);
    },
    start,
    0,
    7 * start,
  );
  expect(found.at).toBeCloseTo(1, 8);
  expect(found.value).toBeCloseTo(-1, 12);
});

// x − eˣ: Newton alone creeps by one a step from the right, and beyond 709 there are no numbers.
test.each([-1e4, -3, 50, 600, 1e5])('x − eˣ from %d', (start) => {
  let calls = 0;
  const found = maximiseConcave(
    (x, into) => {
      calls++;
      into.value = x - Math.exp(x);
      into.slope = 1 - Math.exp(x);
      into.curvature = -Math.exp(x);
    },
    start,
    -Infinity,
    1,
  );
  expect(found.at).toBeCloseTo(0, 8);
  expect(calls).toBeLessThan(60);
});
