import { expect, test } from 'vitest';
import { laws } from '../../../src/statistics/laws/laws.ts';
import { prepareProfile } from '../../../src/statistics/likelihood/constrained.ts';
import { likelihoodRatioCritical } from '../../../src/statistics/likelihood/critical.ts';
import { gatherObservations } from '../../../src/statistics/likelihood/observation.ts';
import { profileScale } from '../../../src/statistics/likelihood/profile-scale.ts';
import { drops } from '../../reference/likelihood/case.ts';
import sen19 from '../../reference/sen-19/SEN-19-mle-existence-tiny-sets.json' with { type: 'json' };
import { naiveLaws, naiveLogLikelihood } from './naive.ts';

const c95 = likelihoodRatioCritical(0.95, 2);
const { sets } = sen19.data;
const intervalOf = (name: keyof typeof sets, critical = c95) => {
  const { levels, fail } = sets[name];
  const sample = gatherObservations(drops(levels, fail), 'identity');
  return profileScale(prepareProfile(sample, laws.logistic.standard), critical);
};

// Limits of finite ends against R: reference-fits.test.ts. Here the sets of SEN-19, whose scale intervals are not printed:
// an end must be where a scan over locations by the definition gives the critical value.
test.each([
  'complete_sep_4',
  'complete_sep_gap',
  'overlap_min',
  'overlap_6',
  'reversed',
  'two_level_equal',
] as const)('ends by a scan over locations: %s', (name) => {
  const { levels, fail } = sets[name];
  const observations = drops(levels, fail);
  const basis = prepareProfile(gatherObservations(observations, 'identity'), laws.logistic.standard);
  const { lower, upper } = intervalOf(name);
  for (const end of [lower, upper]) {
    if (end.why !== 'ratio') continue;
    let best = -Infinity;
    for (let location = -60; location <= 80; location += 0.001)
      best = Math.max(best, naiveLogLikelihood(observations, naiveLaws.logistic, location, end.value!));
    expect(2 * (basis.supremum - best)).toBeCloseTo(c95, 4);
  }
  expect(lower.why === 'ratio' || upper.why === 'ratio').toBe(true);
});

test('without overlap any small scale fits: the lower end is 0', () => {
  for (const name of ['complete_sep_12', 'complete_sep_gap', 'quasi_sep'] as const)
    expect(intervalOf(name).lower).toEqual({ value: 0, why: 'natural-limit' });
});

test('where a constant probability is not rejected there is no upper end', () => {
  for (const name of ['all_nofail', 'all_fail', 'complete_sep_2', 'overlap_min', 'reversed'] as const)
    expect(intervalOf(name).upper).toEqual({ value: null, why: 'constant-probability' });
});

test('no data: no interval', () => {
  const basis = prepareProfile(gatherObservations([], 'identity'), laws.normal.standard);
  expect(profileScale(basis, c95).lower.why).toBe('no-supremum');
});
