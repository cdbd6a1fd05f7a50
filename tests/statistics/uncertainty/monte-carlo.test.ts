import { describe, expect, test } from 'vitest';
import { drawUpBudget } from '../../../src/statistics/uncertainty/budget.ts';
import { expand } from '../../../src/statistics/uncertainty/effective-degrees.ts';
import { type InputLaw, propagateByDrawing } from '../../../src/statistics/uncertainty/monte-carlo.ts';
import { validatePropagation } from '../../../src/statistics/uncertainty/validate-propagation.ts';
import { expectedOf, expectNumber, titleOf } from '../../reference/published.ts';
import additive from '../../reference/unc-05/UNC-05-jcgm101-additive.json' with { type: 'json' };
import mass from '../../reference/unc-06/UNC-06-jcgm101-mass.json' with { type: 'json' };

const settings = { trials: 1_000_000, seed: 101, level: 0.95 };
const quick = { ...settings, trials: 200_000 };
const sum = (values: readonly number[]) => values.reduce((a, b) => a + b);
const known = (name: string, value: number, u: number) => ({
  name,
  value,
  components: [{ name: 'stated', standardUncertainty: u, degrees: Infinity, scope: 'common' as const }],
});

describe(titleOf(additive), () => {
  const rectangular = (u: number): InputLaw => ({
    kind: 'rectangular',
    lower: -u * Math.sqrt(3),
    upper: u * Math.sqrt(3),
  });
  const cases: [string, string, InputLaw[], number][] = [
    [
      'Gaussian half-width 95 %',
      'u(y)',
      Array.from({ length: 4 }, () => ({ kind: 'normal', mean: 0, standardUncertainty: 1 })),
      0.04,
    ],
    ['rectangular half-width 95 % (analytic)', 'u(y)', Array.from({ length: 4 }, () => rectangular(1)), 0.04],
    [
      '9.2.4 half-width 95 % (numerical convolution)',
      '9.2.4 u(y)',
      [...Array.from({ length: 3 }, () => rectangular(1)), rectangular(10)],
      0.1,
    ],
  ];
  // An end of a 95 % interval from 200,000 draws has a standard error of about 0.006 u or 0.01 here, u itself one of 0.0016 u.
  test.each(cases)('%s', (name, spread, laws, error) => {
    const drawn = propagateByDrawing(sum, laws, quick);
    const { lower, upper } = drawn.symmetric;
    expect(Math.abs(0.5 * (upper - lower) - expectedOf(additive, name))).toBeLessThan(error);
    expect(Math.abs(drawn.standardUncertainty / expectedOf(additive, spread) - 1)).toBeLessThan(0.006);
  });

  test('the law of propagation alone gives 1.96 u, which parts from the drawn interval where one law dominates', () => {
    const inputs = [1, 1, 1, 10].map((u, i) => known(`x${i}`, 0, u));
    const { value, whole } = drawUpBudget(sum, inputs);
    const expanded = expand(whole, 0.95);
    expectNumber(additive, '9.2.4 u(y)', whole.standardUncertainty);
    expectNumber(additive, '9.2.4 GUM half-width 1.96 u', expanded.expandedUncertainty);
    const drawn = propagateByDrawing(sum, [1, 1, 1, 10].map(rectangular), quick);
    expect(validatePropagation({ value, ...whole, ...expanded }, drawn).agrees).toBe(false);
    const four = drawUpBudget(
      sum,
      [1, 1, 1, 1].map((u, i) => known(`x${i}`, 0, u)),
    );
    expectNumber(additive, 'u(y)', four.whole.standardUncertainty);
    expectNumber(additive, 'Gaussian half-width 95 %', expand(four.whole, 0.95).expandedUncertainty);
    const normal = propagateByDrawing(
      sum,
      Array.from({ length: 4 }, () => ({ kind: 'normal', mean: 0, standardUncertainty: 1 }) as const),
      quick,
    );
    const validation = validatePropagation({ value: 0, ...four.whole, ...expand(four.whole, 0.95) }, normal);
    // JCGM 101, 9.2.2: u = 2.0 to two digits, hence a tolerance of 0.05.
    expect(validation.tolerance).toBe(0.05);
    expect(validation.agrees).toBe(true);
  });
});

test(titleOf(mass), () => {
  const d = mass.data;
  const model = ([standard, difference, air, weight, reference]: readonly number[]) =>
    (standard! + difference!) * (1 + (air! - 1.2) * (1 / weight! - 1 / reference!)) - d.m_nom;
  const half = ([low, high]: number[]) => (high! - low!) / Math.sqrt(12);
  const budget = drawUpBudget(model, [
    known('standard', d.mRc, d.u_mRc),
    known('difference', d.dm, d.u_dm),
    known('air', 1.2, half(d.rho_a)),
    known('weight', 8000, half(d.rho_W)),
    known('reference', 8000, half(d.rho_R)),
  ]);
  const { expandedUncertainty } = expand(budget.whole, 0.95);
  expectNumber(mass, 'GUF1 u', budget.whole.standardUncertainty);
  expectNumber(mass, 'GUF1 lower', budget.value - expandedUncertainty);
  expectNumber(mass, 'GUF1 upper', budget.value + expandedUncertainty);
  const [a, w, r] = [d.rho_a, d.rho_W, d.rho_R] as [number[], number[], number[]];
  const drawn = propagateByDrawing(
    model,
    [
      { kind: 'normal', mean: d.mRc, standardUncertainty: d.u_mRc },
      { kind: 'normal', mean: d.dm, standardUncertainty: d.u_dm },
      { kind: 'rectangular', lower: a[0]!, upper: a[1]! },
      { kind: 'rectangular', lower: w[0]!, upper: w[1]! },
      { kind: 'rectangular', lower: r[0]!, upper: r[1]! },
    ],
    settings,
  );
  expectNumber(mass, 'MCM mean', drawn.mean);
  expectNumber(mass, 'MCM u', drawn.standardUncertainty);
  expectNumber(mass, 'MCM lower (probabilistically symmetric)', drawn.symmetric.lower);
  expectNumber(mass, 'MCM upper (probabilistically symmetric)', drawn.symmetric.upper);
  expectNumber(mass, 'MCM shortest lower', drawn.shortest.lower);
  expectNumber(mass, 'MCM shortest upper', drawn.shortest.upper);
  expectNumber(mass, 'MCM shortest width', drawn.shortest.upper - drawn.shortest.lower);
  expect(Math.abs(drawn.standardUncertainty / expectedOf(mass, 'exact u from moments') - 1)).toBeLessThan(
    0.002,
  );
  const validation = validatePropagation(
    { value: budget.value, ...budget.whole, expandedUncertainty },
    drawn,
  );
  expect(validation.agrees).toBe(false);
});

// Variances of the laws: width²/12, width²/24, width²/8, ν/(ν − 2) (any handbook; from memory).
test.each([
  ['triangular', { kind: 'triangular', lower: 1, upper: 7 }, 4, Math.sqrt(36 / 24)],
  ['arcsine', { kind: 'arcsine', lower: 1, upper: 7 }, 4, Math.sqrt(36 / 8)],
  ['student', { kind: 'student', mean: 4, standardUncertainty: 2, degrees: 9 }, 4, 2 * Math.sqrt(9 / 7)],
] as [string, InputLaw, number, number][])('draws of the %s law', (_, law, mean, spread) => {
  const drawn = propagateByDrawing(([x]) => x!, [law], quick);
  expect(Math.abs(drawn.mean - mean)).toBeLessThan(0.02);
  expect(Math.abs(drawn.standardUncertainty / spread - 1)).toBeLessThan(0.01);
  expect(propagateByDrawing(([x]) => x!, [law], quick)).toEqual(drawn);
});

// t at 0.975 and 9 degrees of freedom: 2.262 (any table).
test('an interval of one student input is that of its table', () => {
  const law = { kind: 'student', mean: 0, standardUncertainty: 1, degrees: 9 } as const;
  const { symmetric } = propagateByDrawing(([x]) => x!, [law], quick);
  // Standard error 0.01.
  expect(Math.abs(symmetric.upper - 2.262)).toBeLessThan(0.04);
});
