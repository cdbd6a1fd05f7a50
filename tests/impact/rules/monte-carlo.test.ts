import { describe, expect, it } from 'vitest';
import type { ImpactProtocol } from '../../../src/documents/kinds.ts';
import { ruleFor } from '../../../src/impact/rules/method-rules.ts';
import { laws } from '../../../src/statistics/laws/laws.ts';
import { studentLaw } from '../../../src/statistics/laws/student.ts';
import { prepareProfile } from '../../../src/statistics/likelihood/constrained.ts';
import { likelihoodRatioCritical, normalCritical } from '../../../src/statistics/likelihood/critical.ts';
import { expectedCovariance } from '../../../src/statistics/likelihood/expected-information.ts';
import { gatherObservations } from '../../../src/statistics/likelihood/observation.ts';
import { testQuantile } from '../../../src/statistics/likelihood/profile.ts';
import { estimateQuantile } from '../../../src/statistics/likelihood/quantile.ts';
import { type RandomStream, randomStream } from '../../../src/statistics/random/random-stream.ts';
import { spreadBiasFactor } from '../../../src/statistics/tolerance/up-and-down-limit.ts';
import { countUpAndDown } from '../../../src/statistics/up-and-down/count.ts';
import type { LevelDrop } from '../../../src/statistics/up-and-down/grid.ts';
import { meanOfLevels } from '../../../src/statistics/up-and-down/mean-of-levels.ts';
import sen11 from '../../reference/sen-11/SEN-11-mc-precision-of-mean-and-sigma.json' with { type: 'json' };
import sen12 from '../../reference/sen-12/SEN-12-mc-mle-existence-and-interval-coverage.json' with {
  type: 'json',
};
import sen14 from '../../reference/sen-14/SEN-14-mc-dart-stopping-rule.json' with { type: 'json' };
import { upAndDownProtocol } from '../invented.ts';

// Tests carried out by the project's own rules and random numbers against simulations that were made without them. Each
// figure may differ by four standard errors of both: seeded, so that it does so always or never. The same with as many
// tests as the cases have, held to their own tolerances: bench/reference-monte-carlo.md.

const TESTS = 1500;
/** mm: the strengths have mean 5000 and spread 100, far from any limit. */
const MEDIAN = 5000;
const SPREAD = 100;

interface Series {
  readonly drops: readonly LevelDrop[];
  /** Level 0 and the step, in spreads about the median. */
  readonly origin: number;
  readonly step: number;
}

/** Carries out one series by the rule, on a fresh tyre each drop. */
function carryOut(
  protocol: Partial<ImpactProtocol>,
  step: number,
  start: number,
  stream: RandomStream,
): Series {
  const at = MEDIAN + SPREAD * start;
  const rule = ruleFor(
    upAndDownProtocol({
      ...protocol,
      start: at,
      step: { kind: 'additive', size: SPREAD * step },
      limits: { min: null, max: null },
    }),
    null,
  );
  let state = rule.start;
  const drops: LevelDrop[] = [];
  for (;;) {
    const advice = rule.advice(state);
    if (advice.decision === 'stop') return { drops, origin: start, step };
    const failed = MEDIAN + SPREAD * stream.normal() <= advice.height;
    drops.push({ level: Math.round((advice.height - at) / (SPREAD * step)), failed });
    state = rule.step(state, {
      height: advice.height,
      outcome: failed ? 'failed' : 'survived',
      specimen: 'A',
      hit: 1,
    });
  }
}

/** Many series; the grid lies at random about a start that is itself off by `startSpread` spreads. */
function simulate(
  protocol: Partial<ImpactProtocol>,
  step: number,
  startSpread: number,
  seed: number,
): Series[] {
  return Array.from({ length: TESTS }, (_, test) => {
    const stream = randomStream(seed, test);
    const off = startSpread * stream.normal() + step * (stream.uniform() - 0.5);
    return carryOut(protocol, step, off, stream);
  });
}

function meanOf(values: readonly number[]): { mean: number; error: number; spread: number } {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1);
  return { mean, error: Math.sqrt(variance / values.length), spread: Math.sqrt(variance) };
}

/** Within four standard errors of both simulations. */
function expectNear(found: number, error: number, expected: number, expectedError = 0): void {
  expect(Math.abs(found - expected)).toBeLessThan(4 * Math.hypot(error, expectedError));
}

const counts = (series: readonly Series[]) =>
  series.flatMap(({ drops, origin, step }) => countUpAndDown(drops, { origin, step }) ?? []);

describe('the falling-dart stopping rule (SEN-14)', () => {
  const stop = { drops: 20, rarer: 10, atMost: 200 };
  it.each(sen14.data.rows)('step $d_over_sigma, start off by $start_sd spreads', (row) => {
    const series = simulate({ stop }, row.d_over_sigma, row.start_sd, 14);
    const drops = meanOf(series.map((one) => one.drops.length));
    expectNear(drops.mean, drops.error, row.mean_n, drops.spread / Math.sqrt(row.T));
    const found = counts(series);
    expect(found.every(({ N }) => N === 10)).toBe(true);
    const mean = meanOf(found.map((count) => count.mean));
    expectNear(mean.mean, mean.error, row.bias_m, mean.spread / Math.sqrt(row.T));
    // The standard error of a standard deviation, √2 for two simulations of one size at most.
    expectNear(mean.spread, mean.spread / Math.sqrt(2 * TESTS), row.sd_m, row.sd_m_mcse);
    const spread = meanOf(found.map((count) => count.spreadUnchecked));
    expectNear(spread.mean, spread.error, row.mean_s, spread.spread / Math.sqrt(row.T));
  });
});

describe('mean and spread by count with a fixed number of drops (SEN-11)', () => {
  it.each(sen11.data.rows)('$n drops, step $d_over_sigma, start off by $start_sd spreads', (row) => {
    const series = simulate({ stop: { drops: row.n } }, row.d_over_sigma, row.start_sd, 11);
    const found = counts(series);
    const mean = meanOf(found.map((count) => count.mean));
    expectNear(mean.mean, mean.error, row.bias_m, row.bias_m_se);
    expectNear(mean.spread, mean.spread / Math.sqrt(2 * TESTS), row.sd_m, row.sd_m_se);
    const spread = meanOf(found.map((count) => count.spreadUnchecked));
    expectNear(spread.mean, spread.error, row.mean_s_raw, row.mean_s_raw_se);
    const factor = spreadBiasFactor(row.n);
    expectNear(factor * spread.mean, factor * spread.error, row.sl_raw, factor * row.mean_s_raw_se);
    const levels = meanOf(
      series.map(({ drops, origin, step }) => {
        const last = drops.at(-1)!;
        const next = last.level + (last.failed ? -1 : 1);
        return meanOfLevels(
          drops.map(({ level }) => origin + level * step),
          origin + next * step,
        );
      }),
    );
    const expected = row.sd_bhr_sqrt_n / Math.sqrt(row.n);
    expectNear(
      levels.spread,
      levels.spread / Math.sqrt(2 * TESTS),
      expected,
      expected / Math.sqrt(2 * row.T),
    );
  });
});

const z95 = normalCritical(0.95, 2);
const critical = likelihoodRatioCritical(0.95, 2);

/** What one test says of the true median: whether there is an estimate, and which intervals hold it. */
function judged(series: Series) {
  const { drops, origin, step } = series;
  const looks = drops.map(({ level, failed }) => {
    const y = origin + level * step;
    return failed ? { lower: -Infinity, upper: y, count: 1 } : { lower: y, upper: Infinity, count: 1 };
  });
  const basis = prepareProfile(gatherObservations(looks, 'identity'), laws.normal.standard);
  const { fit, sample } = basis;
  const count = countUpAndDown(drops, { origin, step });
  const off = count === null ? null : Math.abs(count.mean) / count.meanError;
  const delta = () => {
    if (fit.kind !== 'exists') return null;
    const expected = { ...fit, covariance: expectedCovariance(sample, laws.normal.standard, fit) };
    const { value, standardError } = estimateQuantile(expected, laws.normal, 0.5);
    return Math.abs(value) <= z95 * standardError;
  };
  return {
    kind: fit.kind,
    profile: testQuantile(basis, 0.5, 0).statistic <= critical,
    delta: delta(),
    count: off === null ? null : off <= z95,
    // With one of the rarer outcome there are no degrees of freedom, and the interval is without end.
    student: off === null ? null : count!.N < 2 || off <= studentLaw(count!.N - 1).quantile(0.975),
  };
}

describe('how often there is an estimate, and how often intervals of the median hold (SEN-12)', () => {
  it.each(sen12.data.rows)('$n drops, step $d_over_sigma', (row) => {
    const tests = simulate({ stop: { drops: row.n } }, row.d_over_sigma, row.start_sd, 12).map(judged);
    const near = (values: readonly (boolean | null)[], expected: number, of = row.T) => {
      const known = values.filter((value) => value !== null);
      const share = known.filter((value) => value).length / known.length;
      const error = (n: number) => Math.sqrt((expected * (1 - expected)) / n) + 1 / n;
      expectNear(share, error(known.length), expected, error(of));
    };
    near(
      tests.map(({ kind }) => kind === 'exists'),
      row.p_exists,
    );
    near(
      tests.map(({ kind }) => kind === 'gap'),
      row.p_complete,
    );
    near(
      tests.map(({ kind }) => kind === 'common-level'),
      row.p_quasi,
    );
    near(
      tests.map(({ profile }) => profile),
      row.cov_LR95_all,
    );
    const estimated = tests.filter(({ kind }) => kind === 'exists');
    const had = row.T * row.p_exists;
    near(
      estimated.map(({ profile }) => profile),
      row.cov_LR95_given_exists,
      had,
    );
    near(
      estimated.map(({ delta }) => delta),
      row.cov_delta95_given_exists,
      had,
    );
    near(
      tests.map(({ count }) => count),
      row.cov_DM_z95,
    );
    near(
      tests.map(({ student }) => student),
      row.cov_DM_tN1_95,
    );
  });
});
