import { expect, test } from 'vitest';
import { steepestCommonRise } from '../../../src/statistics/regression/linear-program.ts';

const rows = (...list: number[][]) => list.map((r) => Float64Array.from(r));

test('opposite rows leave no direction (by hand)', () => {
  expect(steepestCommonRise(rows([1, 0], [-1, 0], [0, 1], [0, -1]), new Float64Array(2)).rise).toBe(0);
});

test('the best direction of a wedge is the corner of the box (by hand)', () => {
  // d₁ ≥ 0 and d₂ ≥ d₁: the sum d₂ is greatest at d₂ = 1, whatever d₁.
  const { direction, rise } = steepestCommonRise(rows([1, 0], [-1, 1]), new Float64Array(2));
  expect(rise).toBe(1);
  expect(direction[1]).toBe(1);
});

// scipy.optimize.linprog 1.10.1 (HiGHS) on the same programmes, computed: maximise c·d, A·d ≥ 0, |d| ≤ 1.
test.each([
  { bonus: [0, -8, 0], rise: 1.95, best: [0.6, 0.2, 1] },
  { bonus: [-3, -4, -2], rise: 5 / 7, best: [-5 / 7, 1, 4 / 7] },
])('three variables against scipy: $bonus', ({ bonus, rise, best }) => {
  const a = rows([1, 2, -1], [-2, 1, 1], [1, -1, 3], [0.5, 0.5, -0.25]);
  const found = steepestCommonRise(a, Float64Array.from(bonus));
  expect(found.rise).toBeCloseTo(rise, 12);
  for (const [k, value] of best.entries()) expect(found.direction[k]!).toBeCloseTo(value, 12);
});
