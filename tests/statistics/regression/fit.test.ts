import { describe, expect, test } from 'vitest';
import type { LawName } from '../../../src/statistics/law.ts';
import { laws } from '../../../src/statistics/laws/laws.ts';
import { fitRegression, type RegressionFit } from '../../../src/statistics/regression/fit.ts';
import reference from '../../reference/regression/survreg.json' with { type: 'json' };
import sen03 from '../../reference/sen-03/SEN-03-compare-two-rigs-2019.json' with { type: 'json' };
import sen24 from '../../reference/sen-24/SEN-24-quantal-turbine-wheels.json' with { type: 'json' };

const observations = reference.lower.map((lower, i) => ({
  lower: lower ?? -Infinity,
  upper: reference.upper[i] ?? Infinity,
  count: 1,
}));
const covariates = [
  { name: 'construction', kind: 'factor', values: reference.construction },
  { name: 'session', kind: 'factor', values: reference.session },
  { name: 'pressure', kind: 'number', values: reference.pressure },
] as const;

function near(found: readonly number[], expected: readonly number[], tolerance: number) {
  expect(found).toHaveLength(expected.length);
  for (const [i, value] of expected.entries())
    expect(Math.abs(found[i]! - value), `${i}: ${found[i]} for ${value}`).toBeLessThanOrEqual(
      tolerance * Math.abs(value),
    );
}

// Invented data of failures, survivals, series and exact values; tests/reference/scripts/regression.R.
describe('survreg (R script, computed, rel.tolerance 1e-14), to 8 digits', () => {
  test.each(reference.survreg)('$law, $terms, scale by $scaleBy', (c) => {
    const model = {
      observations,
      covariates,
      terms: c.terms,
      ...(c.scaleBy === null ? {} : { scaleBy: c.scaleBy }),
    };
    const fit = fitRegression(model, laws[c.law as LawName]) as RegressionFit;
    expect(fit.kind).toBe('exists');
    near(
      fit.effects.map((e) => e.value),
      c.effects,
      1e-8,
    );
    near(
      fit.scales.map((s) => s.value),
      c.scales,
      1e-8,
    );
    near(
      [...fit.effects.map((e) => e.standardError), ...fit.scales.map((s) => s.standardErrorOfLog)],
      c.standardErrors,
      1e-7,
    );
    near([fit.logLikelihood], [c.logLikelihood], 1e-12);
  });
});

describe('glm on failures and survivals only (R script, computed, epsilon 1e-18), to 8 digits', () => {
  const single = observations.flatMap((o, i) =>
    Number.isFinite(o.lower) && Number.isFinite(o.upper) ? [] : [i],
  );
  test.each(reference.glm)('$law', (c) => {
    const fit = fitRegression(
      {
        observations: single.map((i) => observations[i]!),
        covariates: [
          { name: 'construction', kind: 'factor', values: single.map((i) => reference.construction[i]!) },
          { name: 'pressure', kind: 'number', values: single.map((i) => reference.pressure[i]!) },
        ],
        terms: [['construction'], ['pressure']],
      },
      laws[c.law as LawName],
    ) as RegressionFit;
    near(
      fit.effects.map((e) => e.value),
      c.effects,
      1e-8,
    );
    near(
      fit.scales.map((s) => s.value),
      [c.scale],
      1e-8,
    );
    near([fit.logLikelihood], [c.logLikelihood], 1e-12);
  });
});

test('SEN-24 (data found, computed twice): without covariates it is the fit of all three laws', () => {
  const { hours100, cracked, not_cracked } = sen24.data;
  const wheels = hours100
    .flatMap((at, i) => [
      { lower: 0, upper: at, count: cracked[i]! },
      { lower: at, upper: Infinity, count: not_cracked[i]! },
    ])
    .filter((o) => o.count > 0);
  const expected = (name: string) => sen24.expected.find((e) => e.name === name)!.value as number[];
  for (const [name, law] of Object.entries({
    gaussian: 'normal',
    lognormal: 'lognormal',
    weibull: 'weibull',
  } as const)) {
    const asNormal = law === 'normal' ? wheels.map((o) => ({ ...o, lower: o.lower || -Infinity })) : wheels;
    const fit = fitRegression(
      { observations: asNormal, covariates: [], terms: [] },
      laws[law],
    ) as RegressionFit;
    near(
      [fit.effects[0]!.value, fit.scales[0]!.value, fit.logLikelihood],
      expected(`${name}: mu(intercept), sigma(scale), logLik`),
      2e-6,
    );
    near(
      [fit.effects[0]!.standardError, fit.scales[0]!.standardErrorOfLog],
      expected(`${name}: se(mu), se(log sigma)`),
      1e-4,
    );
  }
});

test('SEN-03 (data found): with a scale for each rig the effect of the rig is the difference of the means', () => {
  const values = [...sen03.data.old, ...sen03.data.new];
  const fit = fitRegression(
    {
      observations: values.map((v) => ({ lower: v, upper: v, count: 1 })),
      covariates: [
        {
          name: 'rig',
          kind: 'factor',
          values: values.map((_, i) => (i < sen03.data.old.length ? 'old' : 'new')),
        },
      ],
      terms: [['rig']],
      scaleBy: 'rig',
    },
    laws.normal,
  ) as RegressionFit;
  expect(fit.effects[1]!.name).toBe('rig new');
  expect(Math.abs(fit.effects[1]!.value - 0.0638728)).toBeLessThan(1e-6);
  // Welch's standard error divides by n − 1, likelihood by n: checked on the formula with the printed data.
  const mean = (v: number[]) => v.reduce((a, b) => a + b, 0) / v.length;
  const squares = (v: number[]) => v.reduce((sum, x) => sum + (x - mean(v)) ** 2, 0) / v.length ** 2;
  const standardError = Math.sqrt(squares(sen03.data.old) + squares(sen03.data.new));
  expect(Math.abs(fit.effects[1]!.standardError / standardError - 1)).toBeLessThan(1e-9);
});
