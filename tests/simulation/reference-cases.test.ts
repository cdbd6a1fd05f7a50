import { describe, expect, it } from 'vitest';
import type { SimulatedEstimate, SimulatedPoint } from '../../src/result/simulation.ts';
import sen11 from '../reference/sen-11/SEN-11-mc-precision-of-mean-and-sigma.json' with { type: 'json' };
import sen12 from '../reference/sen-12/SEN-12-mc-mle-existence-and-interval-coverage.json' with {
  type: 'json',
};
import sen13 from '../reference/sen-13/SEN-13-mc-lower-percentile-bounds.json' with { type: 'json' };
import sen14 from '../reference/sen-14/SEN-14-mc-dart-stopping-rule.json' with { type: 'json' };
import { staircases } from './designs.ts';

// Numbers of a simulation made elsewhere (SEN-11 to SEN-14: computed, 50 000 to 200 000 tests a line), to be met within
// 3.5 times the Monte Carlo errors of both: of some sixty comparisons with this one seed none is expected beyond.

const TESTS = 10_000;
const SIGMAS = 3.5;

function estimate(
  point: SimulatedPoint,
  quantity: string,
  method: string,
  probability?: number,
): SimulatedEstimate {
  return point.estimates.find(
    (e) => e.quantity === quantity && e.method === method && e.probability === probability,
  )!;
}

function expectWithin(found: number, error: number, published: number, publishedError: number): void {
  expect(Math.abs(found - published)).toBeLessThan(SIGMAS * Math.hypot(error, publishedError));
}

const binomial = (share: number, tests: number) => Math.sqrt((share * (1 - share)) / tests);

const LINES = [
  { n: 20, d: 0.5 },
  { n: 20, d: 1 },
  { n: 30, d: 1 },
  { n: 30, d: 2 },
];

describe('SEN-11: error of the count estimate, sd(m)·√n/σ and mean s/σ', () => {
  for (const { n, d } of LINES) {
    it(`${n} drops, step ${d} σ, start off by 1 σ at random`, async () => {
      const line = sen11.data.rows.find(
        (row) => row.start_sd === 1 && row.n === n && row.d_over_sigma === d,
      )!;
      const point = await staircases({ drops: n }, d, 1, TESTS);
      const median = estimate(point, 'medianFailureEnergy', 'up-and-down-count');
      const { value, error } = median.standardDeviation!;
      expectWithin(
        value * Math.sqrt(n),
        error * Math.sqrt(n),
        line.sd_times_sqrt_n,
        line.sd_m_se * Math.sqrt(n),
      );
      expectWithin(median.bias!.value, median.bias!.error, line.bias_m, line.bias_m_se);
      const spread = estimate(point, 'energySpread', 'up-and-down-count');
      expectWithin(1 + spread.bias!.value, spread.bias!.error, line.mean_s_iso, line.mean_s_iso_se);
    });
  }
});

describe('SEN-12: how often there is a best fit, and how often intervals of the median hold', () => {
  for (const { n, d } of LINES) {
    it(`${n} drops, step ${d} σ, start off by 1 σ at random`, async () => {
      const line = sen12.data.rows.find((row) => row.n === n && row.d_over_sigma === d)!;
      const point = await staircases({ drops: n }, d, 1, TESTS);
      const shares = { exists: line.p_exists, gap: line.p_complete, 'common-level': line.p_quasi };
      for (const [kind, published] of Object.entries(shares)) {
        const found = point.existence[kind] ?? 0;
        expectWithin(
          found,
          Math.max(binomial(found, TESTS), 1 / TESTS),
          published,
          binomial(published, line.T),
        );
      }
      const { intervals } = estimate(point, 'medianFailureEnergy', 'censored-likelihood');
      const profile = intervals.find(
        ({ sides, method }) => sides === 2 && method === 'profile-likelihood',
      )!.coverage;
      expectWithin(profile.value, profile.error, line.cov_LR95_all, line.mc_se_cov);
      const count = estimate(point, 'medianFailureEnergy', 'up-and-down-count').intervals[0]!.coverage;
      expectWithin(count.value, count.error, line.cov_DM_z95, binomial(line.cov_DM_z95, line.T));
    });
  }
});

describe('SEN-13: how often lower bounds of the 10 % point hold', () => {
  for (const { n, d } of LINES.filter((line) => line.d !== 2)) {
    it(`${n} drops, step ${d} σ`, async () => {
      const point = await staircases({ drops: n }, d, 1, TESTS);
      const lower = (method: string) =>
        estimate(point, 'failureEnergyQuantile', method, 0.1).intervals.find(
          ({ sides, method: by }) => sides === 1 && by !== 'calibrated',
        )!.coverage;
      const classical = sen13.data.k_factor.find(
        (row) => row.n === n && row.d_over_sigma === d && row.p === 0.9,
      )!;
      const limit = lower('up-and-down-count');
      expectWithin(limit.value, limit.error, classical.cov_k_n, binomial(classical.cov_k_n, 200_000));
      const likelihood = sen13.data.likelihood.find((row) => row.n === n && row.d_over_sigma === d)!;
      const published = likelihood['LR_lower_p0.1'];
      const profile = lower('censored-likelihood');
      expectWithin(profile.value, profile.error, published, binomial(published, likelihood.T));
    });
  }
});

describe('SEN-14: twenty drops, then on until the rarer outcome was seen ten times', () => {
  for (const [start, d] of [
    [0, 0.5],
    [1, 1],
    [3, 1],
  ] as const) {
    it(`start off by ${start} σ at random, step ${d} σ`, async () => {
      const line = sen14.data.rows.find((row) => row.start_sd === start && row.d_over_sigma === d)!;
      const point = await staircases({ drops: 20, rarer: 10 }, d, start, TESTS, false);
      const { mean, mostly } = point.drops;
      expectWithin(mean.value, mean.error, line.mean_n, mean.error / Math.sqrt(line.T / TESTS));
      expect(Math.abs(mostly - line.q95_n)).toBeLessThanOrEqual(1);
      const { value, error } = estimate(point, 'medianFailureEnergy', 'up-and-down-count').standardDeviation!;
      expectWithin(value, error, line.sd_m, line.sd_m_mcse);
    });
  }
});
