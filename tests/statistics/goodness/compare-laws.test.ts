import { expect, test } from 'vitest';
import { compareLaws } from '../../../src/statistics/goodness/compare-laws.ts';
import { lawCaveat, MEASURED_CHOICE } from '../../../src/statistics/goodness/law-caveat.ts';
import sen24 from '../../reference/sen-24/SEN-24-quantal-turbine-wheels.json' with { type: 'json' };
import sen27 from '../../reference/sen-27/SEN-27-interval-cosmesis-turnbull.json' with { type: 'json' };

const printed = { normal: 'gaussian', lognormal: 'lognormal', weibull: 'weibull' } as const;
type Expected = { name: string; value: unknown }[];
const logLikelihood = (expected: Expected, law: keyof typeof printed) =>
  (
    expected.find((e) => e.name === `${printed[law]}: mu(intercept), sigma(scale), logLik`)!.value as number[]
  )[2]!;

test.each([
  [
    'SEN-24',
    sen24.expected as Expected,
    sen24.data.hours100
      .flatMap((at, i) => [
        { lower: -Infinity, upper: at, count: sen24.data.cracked[i]! },
        { lower: at, upper: Infinity, count: sen24.data.not_cracked[i]! },
      ])
      .filter((o) => o.count > 0),
  ],
  [
    'SEN-27',
    sen27.expected as Expected,
    (sen27.data.intervals as (number | null)[][]).map(([lower, upper]) => ({
      lower: lower ?? -Infinity,
      upper: upper ?? Infinity,
      count: 1,
    })),
  ],
] as const)(
  '%s (data found, likelihoods computed in R and Python): the order of the laws',
  (_, expected, observations) => {
    const { fits, without } = compareLaws(observations, ['normal', 'lognormal', 'weibull']);
    expect(without).toEqual([]);
    for (const fit of fits) {
      const value = logLikelihood(expected, fit.law as keyof typeof printed);
      expect(Math.abs(fit.logLikelihood / value - 1)).toBeLessThan(2e-6);
      expect(fit.aic).toBeCloseTo(4 - 2 * value, 3);
    }
    const order = (Object.keys(printed) as (keyof typeof printed)[]).sort(
      (a, b) => logLikelihood(expected, b) - logLikelihood(expected, a),
    );
    expect(fits.map((f) => f.law)).toEqual(order);
    expect(fits.reduce((sum, f) => sum + f.weight, 0)).toBeCloseTo(1, 12);
  },
);

test('laws without a fit are named with the reason', () => {
  const { fits, without } = compareLaws(
    [
      { lower: -Infinity, upper: 0, count: 1 },
      { lower: -1, upper: Infinity, count: 1 },
      { lower: 1, upper: Infinity, count: 1 },
      { lower: -Infinity, upper: 3, count: 2 },
    ],
    ['normal', 'weibull'],
  );
  expect(fits.map((f) => f.law)).toEqual(['normal']);
  expect(without).toEqual([{ law: 'weibull', why: 'not-positive' }]);
});

test('the sentence carries the figures of the bench (Monte Carlo, bench/laws-told-apart.md)', () => {
  expect(lawCaveat(28)).toContain(
    'tests of 30 drops the true one of four laws fitted best in 6 % (normal), 51 % (lognormal)',
  );
  for (const { weights } of MEASURED_CHOICE) expect(weights[0]).toBeLessThanOrEqual(weights[1]);
});
