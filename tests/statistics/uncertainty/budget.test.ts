import { expect, test } from 'vitest';
import { type BudgetInput, drawUpBudget } from '../../../src/statistics/uncertainty/budget.ts';
import { combine, expand } from '../../../src/statistics/uncertainty/effective-degrees.ts';
import { secondOrderVariance } from '../../../src/statistics/uncertainty/sensitivity.ts';
import { expectNumber, expectWhole, titleOf } from '../../reference/published.ts';
import gauge from '../../reference/unc-01/UNC-01-gum-h1.json' with { type: 'json' };
import factors from '../../reference/unc-03/UNC-03-gum-g41.json' with { type: 'json' };
import equal from '../../reference/unc-04/UNC-04-ws-equal.json' with { type: 'json' };

const input = (name: string, value: number, u: number, degrees = Infinity): BudgetInput => ({
  name,
  value,
  components: [{ name: 'stated', standardUncertainty: u, degrees, scope: 'common' }],
});

test(titleOf(gauge), () => {
  const d = gauge.data;
  const model = ([ls, diff, alpha, theta, dAlpha, dTheta]: readonly number[]) =>
    ls! + diff! - ls! * (dAlpha! * theta! + alpha! * dTheta!);
  const inputs = [
    input('length of the standard', d.l_s, d.u_ls, d.dof_ls),
    input('difference', d.d, d.u_d, d.dof_d),
    input('expansion', d.alpha_s, d.u_alpha),
    input('temperature', d.theta, d.u_theta),
    input('difference of expansion', d.delta_alpha, d.u_dalpha, d.dof_dalpha),
    input('difference of temperature', d.delta_theta, d.u_dtheta, d.dof_dtheta),
  ];
  const budget = drawUpBudget(model, inputs);
  const size = (name: string) => Math.abs(budget.lines.find((line) => line.input === name)!.contribution);
  const { standardUncertainty } = budget.whole;
  const sixteen = { standardUncertainty, degrees: 16 };
  const values = inputs.map((one) => one.value);
  const us = inputs.map((one) => one.components[0]!.standardUncertainty);
  const only = (...kept: number[]) =>
    Math.sqrt(
      secondOrderVariance(
        model,
        values,
        us.map((u, i) => (kept.includes(i) ? u : 0)),
      ),
    );
  expectWhole(gauge, {
    'l (nm)': budget.value,
    'contribution dalpha': size('difference of expansion'),
    'contribution dtheta': size('difference of temperature'),
    uc: standardUncertainty,
    veff: budget.whole.degrees,
    't 0.99, 16': expand(sixteen, 0.99).factor,
    'U99 with 16 dof, uc rounded to 32': expand({ standardUncertainty: 32, degrees: 16 }, 0.99)
      .expandedUncertainty,
    'U99 unrounded uc, 16 dof': expand(sixteen, 0.99).expandedUncertainty,
    'second-order terms (nm): ls*u(dalpha)*u(theta)': only(4, 3),
    'second-order: ls*u(alpha)*u(dtheta)': only(2, 5),
    'uc with second order': Math.sqrt(standardUncertainty ** 2 + secondOrderVariance(model, values, us)),
  });
});

test(titleOf(factors), () => {
  const { rel_u_percent, n } = factors.data;
  const budget = drawUpBudget(
    ([a, b, c]) => a! * b! * c!,
    rel_u_percent.map((percent, i) => input(`x${i}`, 10 + i, ((10 + i) * percent) / 100, n[i]! - 1)),
  );
  const { standardUncertainty, degrees } = budget.whole;
  const percent = (100 * standardUncertainty) / budget.value;
  const nineteen = { standardUncertainty: percent, degrees: 19 };
  expectWhole(factors, {
    'uc %': percent,
    veff: degrees,
    't95(19)': expand(nineteen, 0.95).factor,
    'U95 %': expand(nineteen, 0.95).expandedUncertainty,
  });
});

test(titleOf(equal), () => {
  const four = combine(Array.from({ length: 4 }, () => ({ contribution: 0.3, degrees: 10 })));
  const { u, c, df } = equal.data;
  const example = combine(u.map((one, i) => ({ contribution: one * c[i]!, degrees: Number(df[i]) })));
  expectNumber(equal, 'four equal contributions, 10 df each', four.degrees);
  expectNumber(equal, 'found example veff', example.degrees);
  expectNumber(equal, 'found example uc', example.standardUncertainty);
});

// JCGM 100, 5.2.2 note 1 (from memory): ten resistors, each set by one standard of 1 kΩ with u = 100 mΩ, in series:
// fully correlated, so the uncertainties add to 1 Ω, and not in quadrature to 0.32 Ω.
test('correlated inputs add, independent ones do so in quadrature', () => {
  const names = Array.from({ length: 10 }, (_, i) => `resistor ${i}`);
  const inputs = names.map((name) => input(name, 1000, 0.1));
  const series = (values: readonly number[]) => values.reduce((a, b) => a + b);
  const pairs = names.flatMap((a, i) =>
    names.slice(i + 1).map((b) => ({ between: [a, b] as const, coefficient: 1 })),
  );
  expect(drawUpBudget(series, inputs, pairs).whole.standardUncertainty).toBeCloseTo(1, 9);
  expect(drawUpBudget(series, inputs).whole.standardUncertainty).toBeCloseTo(0.3162, 4);
});

test('an uncertainty of nought, or without degrees of freedom, is refused with its place', () => {
  const model = ([x]: readonly number[]) => x!;
  expect(() => drawUpBudget(model, [input('height', 0.6, 0)])).toThrow(
    'height, stated: a standard uncertainty',
  );
  expect(() => drawUpBudget(model, [input('height', 0.6, 0.001, Number.NaN)])).toThrow('degrees of freedom');
  const correlation = { between: ['height', 'mass'] as const, coefficient: 0.5 };
  expect(() => drawUpBudget(model, [input('height', 0.6, 0.001)], [correlation])).toThrow('height and mass');
});
