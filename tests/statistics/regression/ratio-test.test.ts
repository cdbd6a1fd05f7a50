import { describe, expect, test } from 'vitest';
import { laws } from '../../../src/statistics/laws/laws.ts';
import { fitRegression, type RegressionFit } from '../../../src/statistics/regression/fit.ts';
import { predictQuantile } from '../../../src/statistics/regression/predict.ts';
import { ratioTest } from '../../../src/statistics/regression/ratio-test.ts';
import cmp13 from '../../reference/cmp-13/CMP-13-lr-probit.json' with { type: 'json' };
import lif17 from '../../reference/lif-17/LIF-17-insulating-fluid.json' with { type: 'json' };
import lif18 from '../../reference/lif-18/LIF-18-motorettes.json' with { type: 'json' };

type Expected = { name: string; value: number; rel_tol: number }[];

function checker(expected: Expected) {
  return (name: string, found: number, tolerance?: number) => {
    const { value, rel_tol } = expected.find((e) => e.name === name)!;
    expect(Math.abs(found - value) / Math.abs(value), name).toBeLessThanOrEqual(tolerance ?? rel_tol);
  };
}

describe('CMP-13 (published values from memory, all computed in R): two lines of 12 groups of 20', () => {
  const { log2_dose, dead_of_20, male } = cmp13.data;
  const groups = log2_dose
    .flatMap((dose, i) => [
      { lower: -Infinity, upper: dose, count: dead_of_20[i]!, sex: male[i] ? 'male' : 'female' },
      { lower: dose, upper: Infinity, count: 20 - dead_of_20[i]!, sex: male[i] ? 'male' : 'female' },
    ])
    .filter((g) => g.count > 0);
  const sex = { name: 'sex', kind: 'factor', values: groups.map((g) => g.sex), reference: 'female' } as const;
  const saturated = dead_of_20.reduce((sum, r) => {
    const share = r / 20;
    return sum + (r ? r * Math.log(share) : 0) + (r < 20 ? (20 - r) * Math.log(1 - share) : 0);
  }, 0);
  const check = checker(cmp13.expected);
  test.each([
    ['logit', laws.logistic],
    ['probit', laws.normal],
  ] as const)('%s', (link, law) => {
    const regress = (terms: string[][], scaleBy?: string) =>
      fitRegression(
        { observations: groups, covariates: [sex], terms, ...(scaleBy ? { scaleBy } : {}) },
        law,
      ) as RegressionFit;
    const separate = regress([['sex']], 'sex');
    const parallel = regress([['sex']]);
    const common = regress([]);
    const deviance = (f: RegressionFit) => 2 * (saturated - f.logLikelihood);
    check(`${link} deviance separate slopes (8 df)`, deviance(separate));
    check(`${link} deviance parallel (9 df)`, deviance(parallel));
    check(`${link} deviance common line (10 df)`, deviance(common));
    check(`${link} LR equal slopes`, ratioTest(parallel, separate).statistic);
    check(`${link} LR equal location`, ratioTest(common, parallel).statistic);
    check(`${link} p equal location`, ratioTest(common, parallel).p);
    for (const percent of [25, 50, 75]) {
      const { fitted, standardErrorOfFitted } = predictQuantile(parallel, percent / 100, { sex: 'female' });
      check(`${link} female log2 ED${percent}`, fitted);
      // Observed and expected information are the same for the logit; for the probit R prints the expected one.
      check(`${link} female SE ED${percent}`, standardErrorOfFitted, link === 'logit' ? 1e-6 : 2e-2);
    }
    expect(() => ratioTest(parallel, common)).toThrow(RangeError);
  });
});

describe('LIF-17 (published values found for single stresses, from memory for the regression): insulating fluid', () => {
  const rows = Object.entries(lif17.data.by_kV).flatMap(([kV, times]) =>
    times.map((t) => ({ kV: Number(kV), t })),
  );
  const observations = rows.map(({ t }) => ({ lower: t, upper: t, count: 1 }));
  const covariates = [
    { name: 'ln V', kind: 'number', values: rows.map((r) => Math.log(r.kV)) },
    { name: 'stress', kind: 'factor', values: rows.map((r) => `${r.kV}`) },
  ] as const;
  const regress = (terms: string[][], scaleBy?: string) =>
    fitRegression(
      { observations, covariates, terms, ...(scaleBy ? { scaleBy } : {}) },
      laws.weibull,
    ) as RegressionFit;
  const line = regress([['ln V']]);
  const free = regress([['stress']]);
  const separate = regress([['stress']], 'stress');
  const check = checker(lif17.expected as Expected);

  test('the inverse power law', () => {
    check('b0', line.effects[0]!.value);
    check('b1 (power)', line.effects[1]!.value);
    check('sigma', line.scales[0]!.value);
    check('se b0', line.effects[0]!.standardError);
    check('se b1', line.effects[1]!.standardError);
    check('loglik', line.logLikelihood);
    check('median life at 20 kV', predictQuantile(line, 0.5, { 'ln V': Math.log(20), stress: '26' }).value);
  });
  test('each stress by itself, in one fit with scales by stress', () => {
    for (const [g, { group, value }] of separate.scales.entries()) {
      const location = separate.effects[0]!.value + (g === 0 ? 0 : separate.effects[g]!.value);
      check(`${group} kV eta`, Math.exp(location));
      check(`${group} kV beta`, 1 / value);
    }
    check('loglik separate shapes', separate.logLikelihood);
  });
  test('likelihood-ratio tests of equal shape and of linearity', () => {
    check('loglik common shape, free location', free.logLikelihood);
    check('LR equal shape (6 df)', ratioTest(free, separate).statistic);
    check('LR equal shape p', ratioTest(free, separate).p);
    check('LR linearity in ln V (5 df)', ratioTest(line, free).statistic);
    check('LR linearity p', ratioTest(line, free).p);
  });
});

describe('LIF-18 (published values found for the fit on ln t, from memory for log10): motorettes', () => {
  const { temp_C, hours, failed } = lif18.data;
  const check = checker(lif18.expected as Expected);
  const fitOf = (keep: (i: number) => boolean) => {
    const rows = hours.flatMap((_, i) => (keep(i) ? [i] : []));
    return fitRegression(
      {
        observations: rows.map((i) => ({
          lower: hours[i]!,
          upper: failed[i] ? hours[i]! : Infinity,
          count: 1,
        })),
        covariates: [{ name: 'x', kind: 'number', values: rows.map((i) => 1000 / (273.2 + temp_C[i]!)) }],
        terms: [['x']],
      },
      laws.lognormal,
    ) as RegressionFit;
  };
  test('all four temperatures, on log10 t', () => {
    const { effects, scales } = fitOf(() => true);
    check('log10 b0', effects[0]!.value / Math.LN10);
    check('log10 b1', effects[1]!.value / Math.LN10);
    check('log10 sigma', scales[0]!.value / Math.LN10);
  });
  test('without 150 °C, on ln t, with quantiles at 130 °C', () => {
    const fit = fitOf((i) => temp_C[i] !== 150);
    check('ln fit without 150 C: b0', fit.effects[0]!.value);
    check('ln fit: b1', fit.effects[1]!.value);
    check('ln fit: sigma', fit.scales[0]!.value);
    check('ln fit: loglik', fit.logLikelihood);
    for (const p of [0.1, 0.5, 0.9])
      check(`quantile ${p} at 130 C`, predictQuantile(fit, p, { x: 1000 / (273.2 + 130) }).value);
  });
});
