import { describe, expect, it, test } from 'vitest';
import type { LawName } from '../../../src/statistics/law.ts';
import { laws } from '../../../src/statistics/laws/laws.ts';
import { prepareProfile } from '../../../src/statistics/likelihood/constrained.ts';
import { likelihoodRatioCritical } from '../../../src/statistics/likelihood/critical.ts';
import { gatherObservations, type Observation } from '../../../src/statistics/likelihood/observation.ts';
import { profileQuantile } from '../../../src/statistics/likelihood/profile.ts';
import { fitRegression, type RegressionFit } from '../../../src/statistics/regression/fit.ts';
import { predictQuantile } from '../../../src/statistics/regression/predict.ts';
import { profilePrediction } from '../../../src/statistics/regression/profile.ts';
import { expectRelative, quantal } from '../../reference/likelihood/case.ts';
import reference from '../../reference/regression/profile.json' with { type: 'json' };
import data from '../../reference/regression/survreg.json' with { type: 'json' };
import sen24 from '../../reference/sen-24/SEN-24-quantal-turbine-wheels.json' with { type: 'json' };

const critical = likelihoodRatioCritical(0.95, 2);
const looks = data.lower.map((lower, i) => ({
  lower: lower ?? -Infinity,
  upper: data.upper[i] ?? Infinity,
  count: 1,
}));
const isSingle = ({ lower, upper }: Observation) => lower === -Infinity || upper === Infinity;

describe('profile intervals at a setting, by glm and survreg with the quantile held (R script, computed)', () => {
  test.each(reference.cases)('$law, $only, $probability', ({ law, only, probability, value, limits }) => {
    const kept = looks.flatMap((look, i) => (only === 'all' || isSingle(look) ? [i] : []));
    const pick = <T>(values: readonly T[]) => kept.map((i) => values[i]!);
    const model = {
      observations: pick(looks),
      covariates: [
        { name: 'construction', kind: 'factor', values: pick(data.construction) },
        { name: 'pressure', kind: 'number', values: pick(data.pressure) },
      ],
      terms: [['construction'], ['pressure']],
    } as const;
    const fit = fitRegression(model, laws[law as LawName]) as RegressionFit;
    expectRelative(predictQuantile(fit, probability, reference.setting).value, value, 1e-8);
    const found = profilePrediction(model, fit, probability, reference.setting, critical);
    expectRelative(found.lower, limits[0]!, 1e-8);
    expectRelative(found.upper, limits[1]!, 1e-8);
  });
});

const { hours100, cracked, not_cracked } = sen24.data;
const wheels = quantal(
  hours100,
  cracked.map((k, i) => k + not_cracked[i]!),
  cracked,
);

it('is the profile interval of the sample where there are no covariates (SEN-24)', () => {
  for (const law of [laws.normal, laws.weibull]) {
    const model = { observations: wheels, covariates: [], terms: [] };
    const fit = fitRegression(model, law) as RegressionFit;
    const plain = profileQuantile(
      prepareProfile(gatherObservations(wheels, law.scale), law.standard),
      0.1,
      critical,
    );
    const found = profilePrediction(model, fit, 0.1, {}, critical);
    expectRelative(found.lower, plain.lower.value!, 1e-8);
    expectRelative(found.upper, plain.upper.value!, 1e-8);
  }
});

it('is unbounded where a probability that does not depend on the level is not rejected', () => {
  // Invented: failures hardly higher than survivals, at two pressures that do the same.
  const outcomes = [0, 1, 0, 1, 0, 1, 0, 0, 1, 0, 1, 1];
  const observations = outcomes.map((failed, i) => {
    const y = 400 + 25 * (i % 3);
    return failed === 1 ? { lower: -Infinity, upper: y, count: 1 } : { lower: y, upper: Infinity, count: 1 };
  });
  const pressure = observations.map((_, i) => (i % 4 < 2 ? 1.9 : 2.1));
  const model = {
    observations,
    covariates: [{ name: 'pressure', kind: 'number', values: pressure }],
    terms: [['pressure']],
  } as const;
  const fit = fitRegression(model, laws.normal) as RegressionFit;
  expect(fit.kind).toBe('exists');
  expect(profilePrediction(model, fit, 0.5, { pressure: 2 }, critical)).toEqual({ lower: null, upper: null });
});

it('is for one scale', () => {
  const values = [...wheels.map(() => 'a'), ...wheels.map(() => 'b')];
  const model = {
    observations: [...wheels, ...wheels],
    covariates: [{ name: 'session', kind: 'factor', values }],
    terms: [['session']],
    scaleBy: 'session',
  } as const;
  const fit = fitRegression(model, laws.normal) as RegressionFit;
  expect(() => profilePrediction(model, fit, 0.5, { session: 'a' }, critical)).toThrow(RangeError);
});
