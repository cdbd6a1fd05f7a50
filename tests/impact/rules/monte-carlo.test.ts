import { describe, expect, it } from 'vitest';
import type { ImpactProtocol } from '../../../src/documents/kinds.ts';
import { ruleFor } from '../../../src/impact/rules/method-rules.ts';
import { judgeExistence } from '../../../src/statistics/likelihood/existence.ts';
import { gatherObservations } from '../../../src/statistics/likelihood/observation.ts';
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
import sen30 from '../../reference/sen-30/SEN-30-naive-average-bias.json' with { type: 'json' };
import { risingProtocol, upAndDownProtocol } from '../invented.ts';

// Tests carried out by the project's own rules and random numbers against simulations that were made without them. Each
// figure may differ by four standard errors of both: seeded, so that it does so always or never.

const TESTS = 8000;
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
  const rows = sen11.data.rows.filter(({ n, start_sd }) => (n === 15 || n === 30) && start_sd === 0);
  it.each(rows)('$n drops, step $d_over_sigma', (row) => {
    const series = simulate({ stop: { drops: row.n } }, row.d_over_sigma, 0, 11);
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

describe('how often there is no estimate (SEN-12)', () => {
  const rows = sen12.data.rows.filter(({ n }) => n === 10 || n === 20);
  it.each(rows)('$n drops, step $d_over_sigma', (row) => {
    const kinds = simulate({ stop: { drops: row.n } }, row.d_over_sigma, row.start_sd, 12).map(
      ({ drops, origin, step }) => {
        const looks = drops.map(({ level, failed }) => {
          const y = origin + level * step;
          return failed ? { lower: -Infinity, upper: y, count: 1 } : { lower: y, upper: Infinity, count: 1 };
        });
        return judgeExistence(gatherObservations(looks, 'identity')).kind;
      },
    );
    const share = (...of: string[]) => kinds.filter((kind) => of.includes(kind)).length / TESTS;
    const near = (found: number, expected: number) => {
      const error = (n: number) => Math.sqrt((expected * (1 - expected)) / n) + 1 / n;
      expectNear(found, error(TESTS), expected, error(row.T));
    };
    near(share('exists'), row.p_exists);
    near(share('gap'), row.p_complete);
  });
});

describe('the mean of noted heights of a rise (SEN-30)', () => {
  it('is high by half a step where a tyre has one fixed strength', () => {
    const { mu, sigma, d, bias, se } = sen30.data.mc;
    expect(mu).toBe(10);
    const rule = ruleFor(
      risingProtocol({
        start: 400,
        step: { kind: 'additive', size: 100 * d },
        limits: { min: null, max: null },
        stop: { specimens: 1 },
      }),
      null,
    );
    const noted = Array.from({ length: 40_000 }, (_, test) => {
      const stream = randomStream(30, test);
      // The strength moves about the grid with the test, as a start chosen anyhow does.
      const strength = 100 * (mu + sigma * stream.normal());
      const offset = 100 * d * stream.uniform();
      let state = rule.start;
      for (;;) {
        const advice = rule.advice(state);
        if (advice.decision === 'stop') throw new Error('a rise ends with a failure');
        const failed = strength <= advice.height + offset;
        if (failed) return (advice.height + offset - strength) / 100;
        state = rule.step(state, { height: advice.height, outcome: 'survived', specimen: 'A', hit: 1 });
      }
    });
    const found = meanOf(noted);
    expectNear(found.mean, found.error, bias, se);
  });
});
