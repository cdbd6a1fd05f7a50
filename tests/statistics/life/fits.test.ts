import { describe, expect, test } from 'vitest';
import type { LawName } from '../../../src/statistics/law.ts';
import { laws } from '../../../src/statistics/laws/laws.ts';
import { exponentialLife } from '../../../src/statistics/life/exponential.ts';
import {
  CHARACTERISTIC_SHARE,
  characteristicLife,
  weibullShape,
} from '../../../src/statistics/life/weibull.ts';
import { prepareProfile } from '../../../src/statistics/likelihood/constrained.ts';
import { likelihoodRatioCritical, normalCritical } from '../../../src/statistics/likelihood/critical.ts';
import { type Fit, fitLocationScale } from '../../../src/statistics/likelihood/fit.ts';
import { gatherObservations } from '../../../src/statistics/likelihood/observation.ts';
import { profileQuantile } from '../../../src/statistics/likelihood/profile.ts';
import { profileScale } from '../../../src/statistics/likelihood/profile-scale.ts';
import { estimateQuantile, estimateScale } from '../../../src/statistics/likelihood/quantile.ts';
import { waldInterval, waldIntervalOnLog } from '../../../src/statistics/likelihood/wald.ts';
import bearing from '../../reference/lif-01/LIF-01-ballbearing.json' with { type: 'json' };
import shock from '../../reference/lif-02/LIF-02-shock.json' with { type: 'json' };
import nist from '../../reference/lif-03/LIF-03-nist8413.json' with { type: 'json' };
import aircraft from '../../reference/lif-05/LIF-05-mannfertig.json' with { type: 'json' };
import mixed from '../../reference/lif-08/LIF-08-aberC5.json' with { type: 'json' };
import fans from '../../reference/lif-12/LIF-12-fans.json' with { type: 'json' };
import tyres from '../../reference/lif-13/LIF-13-bury-trucktyres.json' with { type: 'json' };
import composite from '../../reference/lif-15/LIF-15-bury-composite.json' with { type: 'json' };
import { expectWhole, titleOf } from '../../reference/published.ts';

interface Life {
  readonly time: number;
  readonly failed: boolean;
}

const lives = (times: readonly number[], failed: (i: number) => boolean): Life[] =>
  times.map((time, i) => ({ time, failed: failed(i) }));
const censored = (failures: readonly number[], suspensions: readonly number[]) => [
  ...lives(failures, () => true),
  ...lives(suspensions, () => false),
];
const flagged = (times: readonly number[], failed: readonly number[]) => lives(times, (i) => failed[i] === 1);

const z95 = normalCritical(0.95, 2);
const ratio95 = likelihoodRatioCritical(0.95, 2);

/** What the cases expect of a fit, under their names. */
function fitted(data: readonly Life[], name: LawName): { fit: Fit; numbers: Record<string, number | null> } {
  const law = laws[name];
  const sample = gatherObservations(
    data.map(({ time, failed }) => ({ lower: time, upper: failed ? time : Infinity, count: 1 })),
    law.scale,
  );
  const fit = fitLocationScale(sample, law.standard) as Fit;
  expect(fit.kind).toBe('exists');
  const basis = prepareProfile(sample, law.standard);
  const numbers: Record<string, number | null> = {
    mu: fit.location,
    sigma: fit.scale,
    loglik: fit.logLikelihood,
    se_mu: Math.sqrt(fit.covariance.location),
    se_sigma: estimateScale(fit).standardError,
  };
  if (name === 'weibull') {
    const [shape, life] = [weibullShape(fit), characteristicLife(fit)];
    const [shapeLimits, lifeLimits] = [waldIntervalOnLog(shape, z95), waldIntervalOnLog(life, z95)];
    const scaleLimits = waldIntervalOnLog(estimateScale(fit), z95);
    const location = waldInterval({ value: fit.location, standardError: numbers.se_mu! }, z95);
    const profile = profileQuantile(basis, CHARACTERISTIC_SHARE, ratio95);
    Object.assign(numbers, {
      beta: shape.value,
      eta: life.value,
      se_beta: shape.standardError,
      se_eta: life.standardError,
      'beta.wald_lo (log scale)': shapeLimits.lower,
      'beta.wald_hi': shapeLimits.upper,
      'eta.wald_lo (log scale)': lifeLimits.lower,
      'eta.wald_hi': lifeLimits.upper,
      'sigma.wald_lo (log scale)': scaleLimits.lower,
      'sigma.wald_hi': scaleLimits.upper,
      'mu.wald_lo': location.lower,
      'mu.wald_hi': location.upper,
      'mu.prof_lo': Math.log(profile.lower.value!),
      'mu.prof_hi': Math.log(profile.upper.value!),
    });
  }
  for (const p of [0.01, 0.05, 0.1, 0.5]) {
    const found = estimateQuantile(fit, law, p);
    const profile = profileQuantile(basis, p, ratio95);
    const wald = waldIntervalOnLog(found, z95);
    Object.assign(numbers, {
      [`t${p}`]: found.value,
      [`se_log_t${p}`]: found.standardError / found.value,
      [`t${p}.prof_lo`]: profile.lower.value,
      [`t${p}.prof_hi`]: profile.upper.value,
      [`t${p}.wald_log_lo`]: wald.lower,
      [`t${p}.wald_log_hi`]: wald.upper,
    });
  }
  const scale = profileScale(basis, ratio95);
  numbers['sigma.prof_lo'] = scale.lower.value;
  numbers['sigma.prof_hi'] = scale.upper.value;
  return { fit, numbers };
}

type Reference = typeof bearing;

/** The expected entries of a case that begin with this prefix and a law's name, from the data of that variant. */
function entries(reference: Reference, prefix: string, data: readonly Life[]): Record<string, number | null> {
  const found: Record<string, number | null> = {};
  for (const name of ['weibull', 'lognormal', 'normal'] as const) {
    const start = `${prefix}${name}.`;
    const wanted = reference.expected.filter((one) => one.name.startsWith(start)).map((one) => one.name);
    if (wanted.length === 0) continue;
    const { numbers } = fitted(data, name);
    for (const one of wanted) found[one] = numbers[one.slice(start.length)] ?? null;
  }
  return found;
}

const withValue = (values: readonly number[], at: number, value: number) =>
  values.map((v, i) => (i === at ? value : v));

describe('Weibull, lognormal and normal by the censored likelihood, with Wald and profile limits', () => {
  test(titleOf(bearing), () => {
    const complete = (values: readonly number[]) => lives(values, () => true);
    const { lives: own } = bearing.data;
    const variant = withValue(own, 6, 48.8);
    expectWhole(bearing, {
      ...entries(bearing, '', complete(own)),
      ...entries(bearing, 'ballbearing_4880.', complete(variant)),
      ...entries(bearing, 'ballbearing_4880_6844.', complete(withValue(variant, 12, 68.44))),
    });
  });

  test(titleOf(shock), () => {
    const { distance, failed } = shock.data;
    const reference = shock as unknown as Reference;
    expectWhole(reference, {
      ...entries(reference, '', flagged(distance, failed)),
      ...entries(reference, 'variant18420.', flagged(withValue(distance, 22, 18420), failed)),
    });
  });

  test.each(
    [
      [nist, censored(nist.data.failures, new Array(nist.data.n_censored).fill(nist.data.censored_at))],
      [aircraft, censored(aircraft.data.failures, new Array(3).fill(aircraft.data.censored_at))],
      [tyres, flagged(tyres.data.times, tyres.data.failed)],
      [composite, flagged(composite.data.times, composite.data.failed)],
    ].map(([reference, data]) => [titleOf(reference as never), reference, data] as const),
  )('%s', (_, reference, data) => {
    expectWhole(reference as never, entries(reference as unknown as Reference, '', data as Life[]));
  });

  test(titleOf(fans), () => {
    const data = flagged(fans.data.hours, fans.data.failed);
    expectWhole(fans, {
      ...entries(fans as unknown as Reference, '', data),
      'exponential mean (total time / 12)': exponentialLife(data, 0.95).mean,
    });
  });

  test(titleOf(mixed), () => {
    const { numbers } = fitted(censored(mixed.data.failures, mixed.data.censored), 'weibull');
    expectWhole(mixed, { beta: numbers.beta, eta: numbers.eta });
  });
});

// Zero events: half of χ² with 2 degrees, 2.996 at one-sided 95 % (any table): 3000 h without failure show 1001 h.
test('limits of an exponential life', () => {
  const none = exponentialLife(
    lives([1000, 2000], () => false),
    0.95,
    1,
  );
  expect(none).toMatchObject({ mean: null, failures: 0, upper: null });
  expect(none.lower).toBeCloseTo(3000 / 2.995732, 2);
  // χ² at 0.025 and 0.975 with 20 degrees: 9.5908, 34.1696 (any table).
  const ten = exponentialLife(
    lives(new Array(10).fill(100), () => true),
    0.95,
    2,
    'failure',
  );
  expect(ten.lower).toBeCloseTo(2000 / 34.1696, 3);
  expect(ten.upper).toBeCloseTo(2000 / 9.5908, 2);
});
