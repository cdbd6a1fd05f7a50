import { describe, expect, test } from 'vitest';
import { groupedFit } from '../../../src/statistics/goodness/grouped-fit.ts';
import type { LawName } from '../../../src/statistics/law.ts';
import { laws } from '../../../src/statistics/laws/laws.ts';
import { prepareProfile } from '../../../src/statistics/likelihood/constrained.ts';
import { likelihoodRatioCritical, normalCritical } from '../../../src/statistics/likelihood/critical.ts';
import { expectedCovariance } from '../../../src/statistics/likelihood/expected-information.ts';
import { fiellerQuantile } from '../../../src/statistics/likelihood/fieller.ts';
import { type Covariance, type Fit, fitLocationScale } from '../../../src/statistics/likelihood/fit.ts';
import { gatherObservations, type Observation } from '../../../src/statistics/likelihood/observation.ts';
import { profileQuantile } from '../../../src/statistics/likelihood/profile.ts';
import { estimateQuantile } from '../../../src/statistics/likelihood/quantile.ts';
import { waldInterval, waldIntervalOnLog } from '../../../src/statistics/likelihood/wald.ts';
import { drops, expectCase, expectRelative, quantal, titleOf } from '../../reference/likelihood/case.ts';
import sen01 from '../../reference/sen-01/SEN-01-updown-bottle-staircase-1969.json' with { type: 'json' };
import sen02 from '../../reference/sen-02/SEN-02-updown-drop-hammer-2019.json' with { type: 'json' };
import sen05 from '../../reference/sen-05/SEN-05-updown-tyre-energy-synthetic.json' with { type: 'json' };
import sen15 from '../../reference/sen-15/SEN-15-probit-beetle.json' with { type: 'json' };
import sen16 from '../../reference/sen-16/SEN-16-probit-menarche.json' with { type: 'json' };
import sen18 from '../../reference/sen-18/SEN-18-probit-rotenone.json' with { type: 'json' };
import sen20 from '../../reference/sen-20/SEN-20-two-level-closed-form.json' with { type: 'json' };
import sen24 from '../../reference/sen-24/SEN-24-quantal-turbine-wheels.json' with { type: 'json' };
import sen27 from '../../reference/sen-27/SEN-27-interval-cosmesis-turnbull.json' with { type: 'json' };
import sen28 from '../../reference/sen-28/SEN-28-interval-microprocessor-turnbull.json' with { type: 'json' };
import sen29 from '../../reference/sen-29/SEN-29-step-to-failure-tyre-synthetic.json' with { type: 'json' };

const z95 = normalCritical(0.95, 2);

// Fits of cloglog data need the smallest-extreme-value law on x itself.
const extreme = { standard: laws.weibull.standard, scale: 'identity' } as const;
const links = { probit: laws.normal, logit: laws.logistic, cloglog: extreme } as const;
type Link = (typeof links)[keyof typeof links] | typeof laws.normal;

function study(observations: readonly Observation[], law: Link) {
  const sample = gatherObservations(observations, law.scale);
  const fit = fitLocationScale(sample, law.standard) as Fit;
  expect(fit.kind).toBe('exists');
  const basis = prepareProfile(sample, law.standard);
  // Printed probit analyses take the expected information; for the logit both are the same.
  const expected = { ...fit, covariance: expectedCovarianceOr(sample, law, fit) };
  const ratio = (p: number, level: number, sides: 1 | 2 = 2) => {
    const { lower, upper } = profileQuantile(basis, p, likelihoodRatioCritical(level, sides));
    return [lower.value, upper.value];
  };
  const fieller = (p: number) => fiellerQuantile(expected, law, p, z95);
  return { sample, fit, expected, ratio, fieller };
}

function expectedCovarianceOr(
  sample: ReturnType<typeof gatherObservations>,
  law: Link,
  fit: Fit,
): Covariance {
  return sample.lower.some((low, i) => low !== -Infinity && sample.upper[i] !== Infinity)
    ? fit.covariance
    : expectedCovariance(sample, law.standard, fit);
}

/** Intercept and slope of η + b·x with their standard errors, from location and scale. */
function coefficients({ location, scale, covariance }: Fit) {
  const b = 1 / scale;
  const a = -location * b;
  const { location: vl, cross, scale: vs } = covariance;
  return {
    values: [a, b],
    errors: [
      b * Math.sqrt(vl - (2 * location * cross) / scale + (location / scale) ** 2 * vs),
      b * b * Math.sqrt(vs),
    ],
  };
}

/** 2·(saturated − fitted) log-likelihood of binomial groups. */
function deviance(n: readonly number[], failed: readonly number[], logLikelihood: number): number {
  const term = (k: number, of: number) => (k > 0 ? k * Math.log(k / of) : 0);
  return (
    2 * (n.reduce((sum, m, i) => sum + term(failed[i]!, m) + term(m - failed[i]!, m), 0) - logLikelihood)
  );
}

test(titleOf(sen01), () => {
  const data = drops(sen01.data.levels, sen01.data.fail);
  const { fit, expected, ratio, fieller } = study(data, laws.normal);
  expectCase(sen01, 'probit ML mu, linear height', fit.location);
  expectCase(sen01, 'probit ML sigma', fit.scale);
  expectCase(sen01, 'delta se(mu)', estimateQuantile(expected, laws.normal, 0.5).standardError);
  expectCase(sen01, 'profile-LR 95% for mu', ratio(0.5, 0.95));
  expectCase(sen01, 'Fieller 95% for mu', [fieller(0.5).lower, fieller(0.5).upper]);
  expectCase(sen01, 'Fieller g', fieller(0.5).g);
  expectCase(sen01, 'p=0.10 ML, LR95', [estimateQuantile(fit, laws.normal, 0.1).value, ...ratio(0.1, 0.95)]);
  const log = study(data, laws.lognormal).fit;
  expectCase(sen01, 'log10-height probit: mu (log10 m), sigma', [
    log.location / Math.LN10,
    log.scale / Math.LN10,
  ]);
});

test(titleOf(sen02), () => {
  const data = drops(sen02.data.height.map(Math.log10), sen02.data.fail);
  const { fit, expected, ratio, fieller } = study(data, laws.normal);
  const [a, b] = coefficients(fit).values as [number, number];
  expectCase(sen02, 'beta0', a);
  expectCase(sen02, 'beta1', b);
  expectCase(sen02, 'mu log10', fit.location);
  expectCase(sen02, 'sigma log10', fit.scale);
  expectCase(sen02, 'H50', 10 ** fit.location);
  const median = estimateQuantile(expected, laws.normal, 0.5);
  expectCase(sen02, 'delta se(mu)', median.standardError);
  // STATISTICS, one censored likelihood: observed 0.02089, expected 0.02081.
  expect(estimateQuantile(fit, laws.normal, 0.5).standardError).toBeCloseTo(0.02089, 5);
  const wald = waldInterval(median, z95);
  expectCase(sen02, 'Wald 95% mu', [wald.lower, wald.upper]);
  expectCase(sen02, 'Fieller g', fieller(0.5).g);
  expectCase(sen02, 'Fieller 95% mu', [fieller(0.5).lower, fieller(0.5).upper]);
  expectCase(sen02, 'profile-LR 95% mu', ratio(0.5, 0.95));
  expectCase(sen02, 'profile-LR 90% (=one-sided 95%) mu', ratio(0.5, 0.95, 1));
  const tenth = estimateQuantile(expected, laws.normal, 0.1);
  expectCase(sen02, 'p=0.10: est, delta se', [tenth.value, tenth.standardError]);
  expectCase(
    sen02,
    'p=0.10 one-sided 95% lower: delta',
    tenth.value - normalCritical(0.95, 1) * tenth.standardError,
  );
  expectCase(sen02, 'p=0.10 one-sided 95% lower: profile', [ratio(0.1, 0.95, 1)[0]!]);
  expectCase(sen02, 'p=0.90: est, LR95', [
    estimateQuantile(fit, laws.normal, 0.9).value,
    ...ratio(0.9, 0.95),
  ]);
  const logit = study(data, laws.logistic);
  const centre = estimateQuantile(logit.fit, laws.logistic, 0.5);
  expectCase(sen02, 'logit mu and se', [centre.value, centre.standardError]);
});

test(titleOf(sen05), () => {
  const { fit, expected } = study(drops(sen05.data.levels, sen05.data.fail), laws.normal);
  const median = estimateQuantile(expected, laws.normal, 0.5);
  expectCase(sen05, 'probit ML mu,sigma,se', [fit.location, fit.scale, median.standardError]);
});

test.each(['logit', 'probit', 'cloglog'] as const)(`${titleOf(sen15)}: %s`, (name) => {
  const { x_log10_dose: x, n, dead } = sen15.data;
  const law = links[name];
  const { fit, expected, ratio, fieller } = study(quantal(x, n, dead), law);
  expectCase(sen15, `${name} coef`, coefficients(fit).values);
  expectCase(sen15, `${name} se`, coefficients(expected).errors);
  expectCase(sen15, `${name} deviance (6 df)`, deviance(n, dead, fit.logLikelihood));
  for (const p of [0.1, 0.5, 0.9]) {
    const { value, standardError } = estimateQuantile(expected, law, p);
    const { lower, upper, g } = fieller(p);
    expectCase(sen15, `${name} p=${p}: est,se,g,Fieller95,LR95`, [
      value,
      standardError,
      g,
      lower,
      upper,
      ...ratio(p, 0.95),
    ]);
  }
  if (name === 'logit')
    expectCase(sen15, 'logit: delta se of LD50', estimateQuantile(fit, law, 0.5).standardError);
});

test(titleOf(sen16), () => {
  const { rows } = sen16.data;
  const n = rows.map((row) => row.Total);
  const failed = rows.map((row) => row.Menarche);
  const data = quantal(
    rows.map((row) => row.Age),
    n,
    failed,
  );
  const logit = study(data, laws.logistic);
  expectCase(sen16, 'logit coef', coefficients(logit.fit).values);
  expectCase(sen16, 'logit se', coefficients(logit.fit).errors);
  expectCase(sen16, 'logit residual deviance (23 df)', deviance(n, failed, logit.fit.logLikelihood));
  for (const p of [0.25, 0.5, 0.75]) {
    const { value, standardError } = estimateQuantile(logit.fit, laws.logistic, p);
    const { lower, upper } = logit.fieller(p);
    expectCase(sen16, `logit p=${p}: est,se,Fieller95,LR95`, [
      value,
      standardError,
      lower,
      upper,
      ...logit.ratio(p, 0.95),
    ]);
  }
  const probit = study(data, laws.normal);
  expectCase(sen16, 'probit coef', coefficients(probit.fit).values);
  expectCase(sen16, 'probit deviance', deviance(n, failed, probit.fit.logLikelihood));
  const median = estimateQuantile(probit.expected, laws.normal, 0.5);
  expectCase(sen16, 'probit p=.5 est,se', [median.value, median.standardError]);
});

test(titleOf(sen18), () => {
  const { dose, n, dead } = sen18.data;
  const { fit, expected, ratio, fieller } = study(quantal(dose.map(Math.log10), n, dead), laws.normal);
  expectCase(sen18, 'log10 LD50', fit.location);
  expectCase(sen18, 'slope', 1 / fit.scale);
  expectCase(sen18, 'LD50 mg/l', 10 ** fit.location);
  expectCase(sen18, 'coef (intercept, slope)', coefficients(fit).values);
  expectCase(sen18, 'se', coefficients(expected).errors);
  expectCase(sen18, 'deviance, df', [deviance(n, dead, fit.logLikelihood), n.length - 2]);
  const all = n.reduce((sum, m) => sum + m, 0);
  const died = dead.reduce((sum, k) => sum + k, 0);
  // One share at all doses.
  const flat = died * Math.log(died / all) + (all - died) * Math.log(1 - died / all);
  expectCase(sen18, 'null deviance', deviance(n, dead, flat));
  const groups = dose.map((x, i) => ({ level: Math.log10(x), failures: dead[i]!, drops: n[i]! }));
  const sums = groupedFit(groups, (y) => laws.normal.standard.cdf((y - fit.location) / fit.scale)).value!;
  expectCase(sen18, 'Pearson X2', sums.pearson);
  expectCase(sen18, 'deviance, df', [sums.deviance, sums.degrees]);
  for (const p of [0.1, 0.5, 0.9]) {
    const { value, standardError } = estimateQuantile(expected, laws.normal, p);
    const { lower, upper, g } = fieller(p);
    expectCase(sen18, `p=${p}: est, se, Fieller g, Fieller95, LR95`, [
      value,
      standardError,
      g,
      lower,
      upper,
      ...ratio(p, 0.95),
    ]);
  }
});

test(titleOf(sen20), () => {
  const { levels, n, fail } = sen20.data;
  const { fit, ratio } = study(quantal(levels, n, fail), laws.normal);
  expectCase(sen20, 'mu', fit.location);
  expectCase(sen20, 'sigma', fit.scale);
  expectCase(sen20, 'logLik (Bernoulli)', fit.logLikelihood);
  expectCase(sen20, 'LR80 for mu', ratio(0.5, 0.8));
});

/** The entries that SEN-24, SEN-27 and SEN-29 have alike, of survreg and of two likelihoods written beside it. */
function expectSurvivalCase(
  reference: typeof sen24 | typeof sen27 | typeof sen29,
  data: readonly Observation[],
  name: string,
) {
  const law = laws[(name === 'gaussian' ? 'normal' : name) as LawName];
  const { fit, ratio } = study(data, law);
  expectCase(reference, `${name}: mu(intercept), sigma(scale), logLik`, [
    fit.location,
    fit.scale,
    fit.logLikelihood,
  ]);
  const { location, scale } = fit.covariance;
  expectCase(reference, `${name}: se(mu), se(log sigma)`, [
    Math.sqrt(location),
    Math.sqrt(scale) / fit.scale,
  ]);
  const median = estimateQuantile(fit, law, 0.5);
  const wald = law.scale === 'log' ? waldIntervalOnLog(median, z95) : waldInterval(median, z95);
  expectCase(reference, `${name}: median, Wald95, LR95`, [
    median.value,
    wald.lower,
    wald.upper,
    ...ratio(0.5, 0.95),
  ]);
  const tenth = estimateQuantile(fit, law, 0.1);
  const one = normalCritical(0.95, 1);
  const bound = law.scale === 'log' ? waldIntervalOnLog(tenth, one) : waldInterval(tenth, one);
  expectCase(reference, `${name}: p10 and its one-sided 95% delta lower bound`, [tenth.value, bound.lower]);
  if (name === 'weibull')
    expectCase(reference, 'weibull shape=1/scale, characteristic=exp(intercept)', [
      1 / fit.scale,
      Math.exp(fit.location),
    ]);
}

test.each(['gaussian', 'lognormal', 'weibull'])(`${titleOf(sen24)}: %s`, (name) => {
  const { hours100, cracked, not_cracked } = sen24.data;
  const n = cracked.map((k, i) => k + not_cracked[i]!);
  expectSurvivalCase(sen24, quantal(hours100, n, cracked), name);
});

test.each(['gaussian', 'lognormal', 'weibull'])(`${titleOf(sen27)}: %s`, (name) => {
  const intervals = sen27.data.intervals as (number | null)[][];
  const data = intervals.map(([lower, upper]) => ({
    lower: lower ?? -Infinity,
    upper: upper ?? Infinity,
    count: 1,
  }));
  expectSurvivalCase(sen27, data, name);
});

test.each(['gaussian', 'lognormal', 'weibull'])(`${titleOf(sen29)}: %s`, (name) => {
  const { first_fail, step, start, rig_max } = sen29.data;
  const data = first_fail.map((height) =>
    height === null
      ? { lower: rig_max, upper: Infinity, count: 1 }
      : { lower: height === start ? -Infinity : height - step, upper: height, count: 1 },
  );
  expectSurvivalCase(sen29, data, name);
});

describe(titleOf(sen28), () => {
  const data = (sen28.data.rows as [number | null, number | null, number][]).map(([lower, upper, count]) => ({
    lower: lower ?? 0,
    upper: upper ?? Infinity,
    count,
  }));
  test.each(['lognormal', 'weibull'] as const)('%s', (name) => {
    const { fit } = study(data, laws[name]);
    const entry = name === 'lognormal' ? 'lognormal mu, sigma, logLik' : 'weibull intercept, scale, logLik';
    expectCase(sen28, entry, [fit.location, fit.scale, fit.logLikelihood]);
  });

  test('the median is an extrapolation of 3.6e11 h (note of the case)', () => {
    expectRelative(
      estimateQuantile(study(data, laws.lognormal).fit, laws.lognormal, 0.5).value,
      3.6e11,
      0.01,
    );
  });
});
