import { expect, test } from 'vitest';
import {
  dixonMoodSpread,
  fallingMassSpread,
  meanErrorFactor,
  spreadErrorFactor,
} from '../../../src/statistics/up-and-down/spread.ts';
import { expectCase, titleOf } from '../../reference/likelihood/case.ts';
import sen07 from '../../reference/sen-07/SEN-07-updown-asymptotic-theory.json' with { type: 'json' };

const { table } = sen07.data;
const between = (from: number, to: number) => table.filter((row) => row.dos >= from && row.dos <= to);
const largest = (values: readonly number[]) => Math.max(...values.map(Math.abs));

// The table is the exact long-run behaviour of the rule for σ = 1 and step d = dos, from its Markov chain.
test(`${titleOf(sen07)}: s from the exact M`, () => {
  expect(table.length).toBeGreaterThan(20);
  for (const row of table) expect(dixonMoodSpread(row.M, row.dos)).toBeCloseTo(row.s_over_sigma, 10);
  expectCase(
    sen07,
    'sup over 0.5<=d/sigma<=1.5 of |s/sigma-1|',
    largest(between(0.5, 1.5).map((row) => dixonMoodSpread(row.M, row.dos) - 1)),
  );
});

test(`${titleOf(sen07)}: G and H against the exact standard errors`, () => {
  expectCase(
    sen07,
    'max |G-(6+d)/7| for 0.25<=d/sigma<=2',
    largest(between(0.25, 2).map((row) => meanErrorFactor(1, row.dos) - row.G)),
  );
  expectCase(
    sen07,
    'max |H-(1.1+0.3 sigma/d)| for 0.5<=d/sigma<=1.5',
    largest(between(0.5, 1.5).map((row) => spreadErrorFactor(1, row.dos) - row.H)),
  );
});

test('the falling-mass form is 2e-5 of a step higher (SEN-05, note)', () => {
  expect(fallingMassSpread(0.49, 25) - dixonMoodSpread(0.49, 25)).toBeCloseTo(2e-5 * 25, 12);
});
