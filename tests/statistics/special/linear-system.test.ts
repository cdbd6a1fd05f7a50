import { expect, test } from 'vitest';
import { solveLinear } from '../../../src/statistics/special/linear-system.ts';

// By hand: x = 1, y = −2, z = 3; the first pivot is 0, so that rows must change places.
test('a system whose first pivot is nought', () => {
  const x = solveLinear(Float64Array.of(0, 1, 1, 2, 1, -1, 1, 1, 1), Float64Array.of(1, -3, 2));
  expect([...x].map((v) => Math.round(v * 1e12) / 1e12)).toEqual([1, -2, 3]);
});

test('a singular system is refused', () => {
  expect(() => solveLinear(Float64Array.of(1, 2, 2, 4), Float64Array.of(1, 2))).toThrow('singular');
});
