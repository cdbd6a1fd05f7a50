import { expect, test } from 'vitest';
import { agreementTable, cohensKappa, kappaLimits } from '../../../src/statistics/agreement/kappa.ts';
import KAPPA_R from '../../reference/kappa.json' with { type: 'json' };

// Fleiss, Statistical Methods for Rates and Proportions (1981), tables 13.1 and 13.3 (from memory): 100 subjects, two readers,
// kappa 0.676, standard error 0.087, standard error under chance 0.076.
test("Fleiss's 100 subjects", () => {
  const found = cohensKappa([
    [75, 1, 4],
    [5, 4, 1],
    [0, 0, 10],
  ]);
  expect(found.observed).toBeCloseTo(0.89, 12);
  expect(found.expected).toBeCloseTo(0.66, 12);
  expect(found.kappa).toBeCloseTo(0.676, 3);
  expect(found.standardError).toBeCloseTo(0.087, 2);
  expect(found.standardErrorOfChance).toBeCloseTo(0.076, 3);
});

// The two standard errors against the delta method on the multinomial by numerical derivatives and against random
// assignment, tests/reference/scripts/kappa.R.
test('standard errors as R has them', () => {
  const found = cohensKappa([
    [20, 5],
    [10, 15],
  ]);
  expect(found.kappa).toBeCloseTo(0.4, 12);
  expect(found.standardError).toBeCloseTo(KAPPA_R.standardError, 8);
  expect(found.standardErrorOfChance).toBeCloseTo(KAPPA_R.standardErrorOfChance, 8);
});

test('where both readers only ever say one thing there is no kappa', () => {
  const found = cohensKappa([
    [12, 0],
    [0, 0],
  ]);
  expect(found.kappa).toBeNull();
  expect(kappaLimits(found, 0.95)).toBeNull();
});

test('a table of two lists', () => {
  const { readings, table } = agreementTable(['cut', 'none', 'cut'], ['cut', 'cut', 'cut']);
  expect(readings).toEqual(['cut', 'none']);
  expect(table).toEqual([
    [2, 0],
    [1, 0],
  ]);
  expect(() => agreementTable(['cut'], [])).toThrow('1 readings of the first reader, 0 of the second');
});
