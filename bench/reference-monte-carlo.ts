/**
 * The Monte Carlo cases SEN-11 to SEN-14 and the fits of SEN-30, carried out anew by the project's own rules, fits, counts
 * and limits, with about as many tests as the cases were made with. Each number stands beside the published one, with the
 * case's tolerance and the Monte Carlo error of both. Figures: reference-monte-carlo.md.
 *
 *   npx esbuild bench/reference-monte-carlo.ts --bundle --platform=node --format=esm --outfile=dist/reference-monte-carlo.mjs
 *   node dist/reference-monte-carlo.mjs [share of the cases' tests, default 1] [seed, default 20261125]
 */
import { readFileSync } from 'node:fs';
import type { ImpactProtocol } from '../src/documents/kinds.ts';
import { loadProtocol } from '../src/documents/load.ts';
import { ruleFor } from '../src/impact/rules/method-rules.ts';
import { laws } from '../src/statistics/laws/laws.ts';
import { studentLaw } from '../src/statistics/laws/student.ts';
import {
  maximiseThrough,
  type ProfileBasis,
  prepareProfile,
} from '../src/statistics/likelihood/constrained.ts';
import { likelihoodRatioCritical, normalCritical } from '../src/statistics/likelihood/critical.ts';
import { expectedCovariance } from '../src/statistics/likelihood/expected-information.ts';
import { fitLocationScale } from '../src/statistics/likelihood/fit.ts';
import { gatherObservations, type Observation } from '../src/statistics/likelihood/observation.ts';
import { profileQuantile } from '../src/statistics/likelihood/profile.ts';
import { estimateQuantile } from '../src/statistics/likelihood/quantile.ts';
import { type RandomStream, randomStream } from '../src/statistics/random/random-stream.ts';
import { toleranceFactor } from '../src/statistics/tolerance/tolerance-factor.ts';
import { spreadBiasFactor } from '../src/statistics/tolerance/up-and-down-limit.ts';
import { type CountEstimate, countUpAndDown } from '../src/statistics/up-and-down/count.ts';
import type { LevelDrop } from '../src/statistics/up-and-down/grid.ts';
import { meanOfLevels } from '../src/statistics/up-and-down/mean-of-levels.ts';

const [shareText = '1', seedText = '20261125'] = process.argv.slice(2);
const SHARE = Number(shareText);
const SEED = Number(seedText);
/** Each line has tests of its own, so that chance does not repeat from line to line. */
const seedOf = (of: number, line: number) => SEED + 1000 * of + line;
/** The rule works in mm: median and spread of the strengths. */
const MEDIAN = 50_000;
const SPREAD = 1000;

interface Series {
  readonly drops: LevelDrop[];
  /** Level 0 and the step, in spreads about the median. */
  readonly origin: number;
  readonly step: number;
}

const base = loadProtocol({ path: 'protocols/pinch-up-down.yaml' }) as ImpactProtocol;

/** A series by the rule, a fresh tyre each drop; its grid at random about a start off by `startSd` spreads. */
function carryOut(stop: ImpactProtocol['stop'], step: number, startSd: number, stream: RandomStream): Series {
  const origin = startSd * stream.normal() + step * (stream.uniform() - 0.5);
  const start = MEDIAN + SPREAD * origin;
  const protocol = {
    ...base,
    stop,
    start,
    step: { kind: 'additive', size: SPREAD * step },
  } as ImpactProtocol;
  const rule = ruleFor({ ...protocol, limits: { min: null, max: null } }, null);
  const drops: LevelDrop[] = [];
  let state = rule.start;
  for (;;) {
    const advice = rule.advice(state);
    if (advice.decision === 'stop') return { drops, origin, step };
    const failed = MEDIAN + SPREAD * stream.normal() <= advice.height;
    drops.push({ level: Math.round((advice.height - start) / (SPREAD * step)), failed });
    const outcome = failed ? 'failed' : 'survived';
    state = rule.step(state, { height: advice.height, outcome, specimen: 'A', hit: 1 });
  }
}

/** The looks at the strength, equal ones counted. */
function looksOf({ drops, origin, step }: Series): Observation[] {
  const counts = new Map<number, { failed: number; survived: number }>();
  for (const { level, failed } of drops) {
    const count = counts.get(level) ?? { failed: 0, survived: 0 };
    counts.set(level, count);
    count[failed ? 'failed' : 'survived'] += 1;
  }
  return [...counts].flatMap(([level, { failed, survived }]) => {
    const y = origin + level * step;
    return [
      ...(failed > 0 ? [{ lower: -Infinity, upper: y, count: failed }] : []),
      ...(survived > 0 ? [{ lower: y, upper: Infinity, count: survived }] : []),
    ];
  });
}

/** Mean and standard deviation of what is added one by one, with their Monte Carlo errors. */
class Tally {
  #count = 0;
  #mean = 0;
  #squares = 0;
  add(value: number | boolean): void {
    this.#count += 1;
    const off = Number(value) - this.#mean;
    this.#mean += off / this.#count;
    this.#squares += off * (Number(value) - this.#mean);
  }
  get mean() {
    return this.#mean;
  }
  get spread() {
    return Math.sqrt(this.#squares / (this.#count - 1));
  }
  get count() {
    return this.#count;
  }
  get error() {
    return this.spread / Math.sqrt(this.#count);
  }
}

interface Compared {
  readonly case: string;
  readonly what: string;
  readonly published: number;
  readonly found: number;
  readonly tolerance: number;
  /** Monte Carlo error of the difference. */
  readonly error: number;
}

const all: Compared[] = [];
function compare(
  name: string,
  what: string,
  published: number,
  found: number,
  tolerance: number,
  error: number,
) {
  all.push({ case: name, what, published, found, tolerance, error });
}

function read(path: string) {
  return JSON.parse(readFileSync(`tests/reference/${path}`, 'utf8'));
}

/** Monte Carlo error of two shares of about p in T tests each. */
const ofShares = (p: number, T: number, ours: number) =>
  Math.sqrt(Math.max(p * (1 - p), 1e-5) * (1 / Math.max(T, 1) + 1 / Math.max(ours, 1)));

function sen11(): void {
  const { rows } = read('sen-11/SEN-11-mc-precision-of-mean-and-sigma.json').data;
  let worst = 0;
  for (const [index, row] of rows.entries()) {
    const { n, d_over_sigma: d, start_sd: startSd, T } = row;
    const tests = Math.round(SHARE * T);
    const [mean, raw, iso, levels, rare] = [new Tally(), new Tally(), new Tally(), new Tally(), new Tally()];
    for (let test = 0; test < tests; test++) {
      const series = carryOut({ drops: n }, d, startSd, randomStream(seedOf(11, index), test));
      const count = countUpAndDown(series.drops, series);
      if (count === null) continue;
      mean.add(count.mean);
      raw.add(count.spreadUnchecked);
      iso.add(count.spread);
      rare.add(count.N);
      const last = series.drops.at(-1)!;
      const at = (level: number) => series.origin + level * series.step;
      levels.add(
        meanOfLevels(
          series.drops.map(({ level }) => at(level)),
          at(last.level + (last.failed ? -1 : 1)),
        ),
      );
    }
    const both = Math.sqrt(1 + T / tests);
    const label = `${n} drops, step ${d}, start ± ${startSd}`;
    const root = Math.sqrt(n);
    worst = Math.max(worst, Math.abs(mean.mean));
    compare(
      'SEN-11',
      `${label}: sd(m)·√n`,
      row.sd_times_sqrt_n,
      mean.spread * root,
      0.012,
      row.sd_m_se * root * both,
    );
    compare('SEN-11', `${label}: bias of m`, row.bias_m, mean.mean, 0.003, row.bias_m_se * both);
    compare('SEN-11', `${label}: mean s`, row.mean_s_raw, raw.mean, 0.006, row.mean_s_raw_se * both);
    compare(
      'SEN-11',
      `${label}: mean s, 0.53 d where M ≤ 0.3`,
      row.mean_s_iso,
      iso.mean,
      0.006,
      row.mean_s_iso_se * both,
    );
    const factor = spreadBiasFactor(n);
    compare(
      'SEN-11',
      `${label}: mean s·n/(n − 3)`,
      row.sl_raw,
      factor * raw.mean,
      0.008,
      factor * row.mean_s_raw_se * both,
    );
    const bhr = levels.spread * root;
    compare(
      'SEN-11',
      `${label}: sd of the mean of levels·√n`,
      row.sd_bhr_sqrt_n,
      bhr,
      0.012,
      (bhr * both) / Math.sqrt(2 * T),
    );
    compare(
      'SEN-11',
      `${label}: mean N`,
      row.meanN,
      rare.mean,
      0.02,
      Math.max(rare.error * Math.sqrt(1 + tests / T), 1e-4),
    );
  }
  compare('SEN-11', 'largest |bias of m|', 0, worst, 0.003, 0.001);
}

/** Twice what the likelihood loses where the quantile z is held at y. */
function ratioAt(basis: ProfileBasis, y: number, z: number): number {
  const start = basis.fit.kind === 'exists' ? 1 / basis.fit.scale : 4 / basis.unit;
  return 2 * (basis.supremum - maximiseThrough(basis, y, z, start).value);
}

function sen12(): void {
  const z95 = normalCritical(0.95, 2);
  const critical = likelihoodRatioCritical(0.95, 2);
  const { rows } = read('sen-12/SEN-12-mc-mle-existence-and-interval-coverage.json').data;
  for (const [index, row] of rows.entries()) {
    const { n, d_over_sigma: d, T } = row;
    const tests = Math.round(SHARE * T);
    const tally = { exists: new Tally(), gap: new Tally(), tied: new Tally(), ratio: new Tally() };
    const given = { ratio: new Tally(), delta: new Tally() };
    const count = { z: new Tally(), t: new Tally() };
    const ts = new Map<number, number>();
    for (let test = 0; test < tests; test++) {
      const series = carryOut({ drops: n }, d, row.start_sd, randomStream(seedOf(12, index), test));
      const basis = prepareProfile(gatherObservations(looksOf(series), 'identity'), laws.normal.standard);
      const { fit } = basis;
      const holds = ratioAt(basis, 0, 0) <= critical;
      tally.exists.add(fit.kind === 'exists');
      tally.gap.add(fit.kind === 'gap');
      tally.tied.add(fit.kind === 'common-level');
      tally.ratio.add(holds);
      if (fit.kind === 'exists') {
        given.ratio.add(holds);
        const expected = { ...fit, covariance: expectedCovariance(basis.sample, laws.normal.standard, fit) };
        const { value, standardError } = estimateQuantile(expected, laws.normal, 0.5);
        given.delta.add(Math.abs(value) <= z95 * standardError);
      }
      const found = countUpAndDown(series.drops, series);
      if (found === null) continue;
      const off = Math.abs(found.mean) / found.meanError;
      count.z.add(off <= z95);
      const t = ts.get(found.N) ?? (found.N > 1 ? studentLaw(found.N - 1).quantile(0.975) : Infinity);
      ts.set(found.N, t);
      count.t.add(off <= t);
    }
    const label = `${n} drops, step ${d}`;
    const each: [string, number, Tally, number][] = [
      ['an estimate exists', row.p_exists, tally.exists, T],
      ['gap', row.p_complete, tally.gap, T],
      ['one common level', row.p_quasi, tally.tied, T],
      ['profile interval holds', row.cov_LR95_all, tally.ratio, T],
      ['profile interval holds, given an estimate', row.cov_LR95_given_exists, given.ratio, T * row.p_exists],
      [
        'delta interval holds, given an estimate',
        row.cov_delta95_given_exists,
        given.delta,
        T * row.p_exists,
      ],
      ['count ± 1.96 errors holds', row.cov_DM_z95, count.z, T],
      ['count ± t(N − 1) errors holds', row.cov_DM_tN1_95, count.t, T],
    ];
    for (const [what, published, found, size] of each)
      compare(
        'SEN-12',
        `${label}: ${what}`,
        published,
        found.mean,
        0.004,
        ofShares(published, size, found.count),
      );
  }
}

function sen13(): void {
  const { k_factor, likelihood } = read('sen-13/SEN-13-mc-lower-percentile-bounds.json').data;
  const limit = ({ mean, spread }: CountEstimate, k: number, factor: number) => mean - k * factor * spread;
  for (const [index, row] of k_factor.entries()) {
    const { n, d_over_sigma: d, p } = row;
    const tests = Math.round(SHARE * 200_000);
    const truth = laws.normal.standard.quantile(1 - p);
    const k = toleranceFactor(p, 0.95, n);
    const [plain, mended] = [new Tally(), new Tally()];
    for (let test = 0; test < tests; test++) {
      const series = carryOut({ drops: n }, d, 1, randomStream(seedOf(13, index), test));
      const count = countUpAndDown(series.drops, series);
      if (count === null) continue;
      plain.add(limit(count, k, 1) <= truth);
      mended.add(limit(count, k, spreadBiasFactor(n)) <= truth);
    }
    const label = `${n} drops, step ${d}, ${100 - 100 * p} % point`.replace(/\.\d+ % point/u, ' % point');
    compare(
      'SEN-13',
      `${label}: m − k·s holds`,
      row.cov_k_n,
      plain.mean,
      0.005,
      ofShares(row.cov_k_n, 200_000, tests),
    );
    compare(
      'SEN-13',
      `${label}: with s·n/(n − 3)`,
      row.cov_k_n_SL,
      mended.mean,
      0.005,
      ofShares(row.cov_k_n_SL, 200_000, tests),
    );
  }
  const one = normalCritical(0.95, 1);
  const critical = likelihoodRatioCritical(0.95, 1);
  for (const [index, row] of likelihood.entries()) {
    const { n, d_over_sigma: d, T } = row;
    const tests = Math.round(SHARE * T);
    for (const p of [0.5, 0.1, 0.01]) {
      const z = laws.normal.standard.quantile(p);
      const [ratio, ratioGiven, delta] = [new Tally(), new Tally(), new Tally()];
      for (let test = 0; test < tests; test++) {
        const series = carryOut({ drops: n }, d, row.start_sd, randomStream(seedOf(23, index), test));
        const basis = prepareProfile(gatherObservations(looksOf(series), 'identity'), laws.normal.standard);
        const { lower } = profileQuantile(basis, p, critical);
        const holds = lower.value === null || lower.value <= z;
        ratio.add(holds);
        if (basis.fit.kind !== 'exists') continue;
        ratioGiven.add(holds);
        const covariance = expectedCovariance(basis.sample, laws.normal.standard, basis.fit);
        const { value, standardError } = estimateQuantile({ ...basis.fit, covariance }, laws.normal, p);
        delta.add(value - one * standardError <= z);
      }
      const label = `${n} drops, step ${d}, ${100 * p} % point`;
      const given = T * row.p_exists;
      const published = (key: string) => row[`${key}_p${p}`] as number;
      const [a, b, c] = [
        published('LR_lower'),
        published('LR_lower_given_exists'),
        published('delta_lower_given_exists'),
      ];
      compare('SEN-13', `${label}: profile bound holds`, a, ratio.mean, 0.006, ofShares(a, T, tests));
      compare(
        'SEN-13',
        `${label}: profile bound holds, given an estimate`,
        b,
        ratioGiven.mean,
        0.006,
        ofShares(b, given, ratioGiven.count),
      );
      compare(
        'SEN-13',
        `${label}: delta bound holds, given an estimate`,
        c,
        delta.mean,
        0.008,
        ofShares(c, given, delta.count),
      );
    }
  }
}

function sen14(): void {
  for (const [index, row] of read('sen-14/SEN-14-mc-dart-stopping-rule.json').data.rows.entries()) {
    const { d_over_sigma: d, start_sd: startSd, T } = row;
    const tests = Math.round(SHARE * T);
    const [drops, mean, spread] = [new Tally(), new Tally(), new Tally()];
    for (let test = 0; test < tests; test++) {
      const series = carryOut(
        { drops: 20, rarer: 10, atMost: 1000 },
        d,
        startSd,
        randomStream(seedOf(14, index), test),
      );
      const count = countUpAndDown(series.drops, series)!;
      drops.add(series.drops.length);
      mean.add(count.mean);
      spread.add(count.spreadUnchecked);
    }
    const both = Math.sqrt(1 + tests / T);
    const label = `start ± ${startSd}, step ${d}`;
    compare('SEN-14', `${label}: mean number of drops`, row.mean_n, drops.mean, 0.004, drops.error * both);
    compare(
      'SEN-14',
      `${label}: sd(m)`,
      row.sd_m,
      mean.spread,
      0.004,
      row.sd_m_mcse * Math.sqrt(1 + T / tests),
    );
    compare('SEN-14', `${label}: mean s`, row.mean_s, spread.mean, 0.004, spread.error * both);
  }
}

/** Sixteen tyres of spread 60 mm raised by steps: the mean of noted heights, and the interval likelihood. */
function sen30(): void {
  const { expected } = read('sen-30/SEN-30-naive-average-bias.json');
  const entry = expected.find(({ name }: { name: string }) => name.startsWith('interval-censored ML'));
  const tests = Math.round(SHARE * 40_000);
  for (const [i, step] of [25, 60, 120].entries()) {
    const [naive, fitted] = [new Tally(), new Tally()];
    for (let test = 0; test < tests; test++) {
      const stream = randomStream(seedOf(30, i), test);
      const offset = stream.uniform();
      const looks = Array.from({ length: 16 }, () => {
        const upper = step * (Math.ceil((60 * stream.normal()) / step - offset) + offset);
        return { lower: upper - step, upper, count: 1 };
      });
      naive.add(looks.reduce((sum, { upper }) => sum + upper / 16, 0));
      const fit = fitLocationScale(gatherObservations(looks, 'identity'), laws.normal.standard);
      if (fit.kind === 'exists') fitted.add(fit.location);
    }
    // The case has 4000 tests.
    const both = Math.sqrt(1 + tests / 4000);
    compare(
      'SEN-30',
      `step ${step} mm: bias of the mean of noted heights (mm)`,
      entry.value[2 * i],
      naive.mean,
      0.8,
      naive.error * both,
    );
    compare(
      'SEN-30',
      `step ${step} mm: bias of the interval likelihood (mm)`,
      entry.value[2 * i + 1],
      fitted.mean,
      0.8,
      fitted.error * both,
    );
  }
}

sen11();
sen12();
sen13();
sen14();
sen30();

const beyond = all.filter(({ published, found, tolerance }) => Math.abs(found - published) > tolerance);
const sigmas = ({ published, found, error }: Compared) => Math.abs(found - published) / error;
console.log('| case | numbers | within the tolerance | largest difference in Monte Carlo errors | above 3 |');
console.log('| --- | --- | --- | --- | --- |');
for (const name of [...new Set(all.map((one) => one.case))]) {
  const own = all.filter((one) => one.case === name);
  const within = own.length - beyond.filter((one) => one.case === name).length;
  const worst = Math.max(...own.map(sigmas)).toFixed(1);
  console.log(
    `| ${name} | ${own.length} | ${within} | ${worst} | ${own.filter((one) => sigmas(one) > 3).length} |`,
  );
}
console.log('\n| beyond its tolerance | published | found | tolerance | difference in Monte Carlo errors |');
console.log('| --- | --- | --- | --- | --- |');
for (const one of beyond)
  console.log(
    `| ${one.case}, ${one.what} | ${one.published.toFixed(5)} | ${one.found.toFixed(5)} | ${one.tolerance} | ${sigmas(one).toFixed(1)} |`,
  );
