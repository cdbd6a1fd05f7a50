/**
 * How often calibrated and profile intervals hold, and how wide they are: normal strength, median 0, spread 1, the grid of
 * levels shifted evenly from test to test, tests without an estimate included. Figures: coverage.md.
 *
 *   npx esbuild bench/coverage.ts --bundle --platform=node --format=esm --outfile=dist/coverage.mjs
 *   node dist/coverage.mjs run DIRECTORY [part] [parts] [tests, default 4000] [seed, default 20261125]
 *   node dist/coverage.mjs table DIRECTORY
 *
 * Each cell leaves a file, so that an interrupted study goes on where it stopped and parts may run side by side.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ASSUMED_SHARE } from '../src/impact/estimates/repeatable.ts';
import { bestLine, liesAbove } from '../src/statistics/calibration/best-line.ts';
import { calibratedQuantile } from '../src/statistics/calibration/calibrate.ts';
import { cellsOf, visitCells } from '../src/statistics/calibration/cells.ts';
import type { CriticalValues, Tail } from '../src/statistics/calibration/critical-values.ts';
import { drawing } from '../src/statistics/calibration/draw.ts';
import { type Experiment, emptyTrials } from '../src/statistics/calibration/experiment.ts';
import { nullStrength } from '../src/statistics/calibration/null-strength.ts';
import { rungsOf } from '../src/statistics/calibration/rungs.ts';
import { simulatedCriticals } from '../src/statistics/calibration/simulated-criticals.ts';
import { tabulatedCriticals } from '../src/statistics/calibration/tabulated-criticals.ts';
import { testCalibrated } from '../src/statistics/calibration/test-quantile.ts';
import { normal } from '../src/statistics/laws/normal.ts';
import { type ProfileBasis, prepareProfile } from '../src/statistics/likelihood/constrained.ts';
import { likelihoodRatioCritical } from '../src/statistics/likelihood/critical.ts';
import { gatherObservations } from '../src/statistics/likelihood/observation.ts';
import { profileQuantile } from '../src/statistics/likelihood/profile.ts';
import { randomStream } from '../src/statistics/random/random-stream.ts';
import { type Cell, cells } from './coverage-cells.ts';

const SHARES = [0.5, 0.1];
const LEVELS = [0.95, 0.9];
/** Simulated tests behind one test of the true value, where there is no table; and intervals found for their width. */
const REPLICATES = 199;
const WIDTHS = { tabulated: 1000, simulated: 100 };

type Counts = Record<string, number>;

function observe(experiment: Experiment, seed: number, index: number): ProfileBasis {
  const trials = emptyTrials(experiment.mostDrops);
  const effects = new Float64Array(experiment.mostSpecimens);
  drawing(experiment, { location: 0, scale: 1 })(randomStream(seed, index), trials, effects);
  const { lower, upper } = cellsOf(experiment);
  const seen: { lower: number; upper: number; count: number }[] = [];
  visitCells(trials, experiment.reading, (cell) => {
    seen.push({ lower: lower[cell]!, upper: upper[cell]!, count: 1 });
  });
  return prepareProfile(gatherObservations(seen, 'identity'), normal);
}

function runCell(cell: Cell, tests: number, seed: number): Counts {
  const counts: Counts = { tests };
  const add = (key: string, by: number | boolean) => {
    counts[key] = (counts[key] ?? 0) + Number(by);
  };
  const start = performance.now();
  for (let index = 0; index < tests; index++) {
    const offset = (index + 0.5) / tests - 0.5;
    const made = cell.experiment(offset);
    const basis = observe(made, seed, index);
    const experiment = cell.told ? { ...made, step: cell.told(basis) } : made;
    // What the analysis takes for the share between tyres is not the truth.
    const assumed = experiment.share === 0.5 ? { ...experiment, share: ASSUMED_SHARE } : experiment;
    const { tabulated } = cell;
    const table = tabulated ? tabulatedCriticals(tabulated(offset)) : null;
    add('none', basis.fit.kind !== 'exists');
    for (const p of SHARES) {
      profileHolds(basis, p, add);
      if (table) tableHolds(basis, assumed, table, p, add);
      else simulationHolds(basis, assumed, p, seed + 1 + index, add);
    }
    const every = Math.floor(tests / (table ? WIDTHS.tabulated : WIDTHS.simulated));
    if (index % every === 0) widths(basis, assumed, table, add);
  }
  counts.seconds = (performance.now() - start) / 1000;
  return counts;
}

type Add = (key: string, by: number | boolean) => void;

function rootAt(basis: ProfileBasis, experiment: Experiment, p: number) {
  const y = normal.quantile(p);
  const { strength, value } = nullStrength(basis, experiment, p, y);
  const root = Math.sqrt(Math.max(0, 2 * (basis.supremum - value)));
  return { y, strength, root, isAbove: liesAbove(bestLine(basis), y, y) };
}

function profileHolds(basis: ProfileBasis, p: number, add: Add): void {
  const y = normal.quantile(p);
  for (const level of LEVELS) {
    const two = profileQuantile(basis, p, likelihoodRatioCritical(level, 2));
    const one = profileQuantile(basis, p, likelihoodRatioCritical(level, 1));
    add(`profile ${p} ${level} both`, within(two.lower.value, y, two.upper.value));
    add(`profile ${p} ${level} above`, within(one.lower.value, y, null));
  }
}

function tableHolds(
  basis: ProfileBasis,
  experiment: Experiment,
  table: CriticalValues,
  p: number,
  add: Add,
): void {
  const { y, strength, root, isAbove } = rootAt(basis, experiment, p);
  const tails: [Tail, number][] = [
    ['both', root],
    ['above', isAbove ? root : -root],
    ['below', isAbove ? -root : root],
  ];
  for (const level of LEVELS) {
    for (const [tail, observed] of tails)
      add(`calibrated ${p} ${level} ${tail}`, observed <= table({ p, y, strength, level, tail }));
  }
}

function simulationHolds(
  basis: ProfileBasis,
  experiment: Experiment,
  p: number,
  seed: number,
  add: Add,
): void {
  const tested = testCalibrated(basis, experiment, p, normal.quantile(p), { seed, size: REPLICATES });
  for (const level of LEVELS) {
    const risk = 1 - level + 1e-12;
    add(`calibrated ${p} ${level} both`, tested.twoSided > risk);
    add(`calibrated ${p} ${level} above`, tested.above > risk);
    add(`calibrated ${p} ${level} below`, tested.below > risk);
  }
}

/** The whole intervals, as they are printed, of some of the tests. */
function widths(basis: ProfileBasis, experiment: Experiment, table: CriticalValues | null, add: Add): void {
  const start = performance.now();
  const criticals = table ?? simulatedCriticals(experiment, { seed: 1, each: 300 });
  const rungs = table ? null : rungsOf(basis, experiment);
  add('intervals', 1);
  for (const p of SHARES) {
    const y = normal.quantile(p);
    const profile = profileQuantile(basis, p, likelihoodRatioCritical(0.95, 2));
    const calibrated = calibratedQuantile(basis, experiment, criticals, p, 0.95, 2, rungs);
    const from = [profile.lower.value, profile.upper.value];
    const to = [calibrated.lower, calibrated.upper];
    add(`interval ${p} holds`, within(calibrated.lower, y, calibrated.upper));
    add(`interval ${p} profile unbounded`, from.includes(null));
    add(`interval ${p} unbounded`, to.includes(null));
    if (from.includes(null) || to.includes(null)) continue;
    add(`interval ${p} bounded`, 1);
    add(`interval ${p} profile width`, from[1]! - from[0]!);
    add(`interval ${p} width`, to[1]! - to[0]!);
    add(`interval ${p} log ratio`, Math.log((to[1]! - to[0]!) / (from[1]! - from[0]!)));
  }
  add('interval ms', performance.now() - start);
}

function within(lower: number | null, y: number, upper: number | null): boolean {
  return (lower === null || lower <= y) && (upper === null || upper >= y);
}

function table(directory: string): void {
  const kinds = new Map<string, string[]>();
  const short: string[] = [];
  for (const cell of cells) {
    const file = join(directory, `${cell.id}.json`);
    if (!existsSync(file)) continue;
    const found = JSON.parse(readFileSync(file, 'utf8')) as Counts;
    const share = (key: string) => (100 * (found[key] ?? 0)) / found.tests!;
    const each = (key: string) => (100 * (found[key] ?? 0)) / found.intervals!;
    const row = [cell.name, share('none').toFixed(1)];
    for (const p of SHARES) {
      for (const level of LEVELS) {
        for (const tail of ['both', 'above']) {
          const calibrated = share(`calibrated ${p} ${level} ${tail}`);
          const profile = share(`profile ${p} ${level} ${tail}`);
          const isAsked = p === 0.5 || tail === 'above';
          const floor = 100 * level - 1;
          const error = Math.sqrt((floor * (100 - floor)) / found.tests!);
          const fails = calibrated < floor - 2 * error || (calibrated > 98.5 && profile <= 98.5);
          if (isAsked && fails)
            short.push(`${cell.kind}, ${cell.name}: ${p} ${level} ${tail}: ${calibrated.toFixed(2)}`);
          row.push(`${calibrated.toFixed(1)} (${profile.toFixed(1)})`);
        }
      }
      const ratio = found[`interval ${p} width`]! / found[`interval ${p} profile width`]!;
      const typical = Math.exp(found[`interval ${p} log ratio`]! / found[`interval ${p} bounded`]!);
      row.push(Number.isFinite(ratio) ? `${ratio.toFixed(2)}, ${typical.toFixed(2)}` : '–');
      row.push(
        `${each(`interval ${p} unbounded`).toFixed(0)} (${each(`interval ${p} profile unbounded`).toFixed(0)})`,
      );
    }
    kinds.set(cell.kind, [...(kinds.get(cell.kind) ?? []), `| ${row.join(' | ')} |`]);
  }
  const columns = SHARES.flatMap((p) => {
    const of = p === 0.5 ? 'median' : '10 %';
    return [`${of} 95`, `${of} ≥ 95`, `${of} 90`, `${of} ≥ 90`, 'width', 'unbounded %'];
  });
  for (const [kind, rows] of kinds) {
    console.log(`\n### ${kind}\n\n| | none % | ${columns.join(' | ')} |`);
    console.log(`| --- |${' --- |'.repeat(columns.length + 1)}`);
    console.log(rows.join('\n'));
  }
  console.log(`\nBeyond the marks: ${short.length === 0 ? 'none' : `\n- ${short.join('\n- ')}`}`);
  const seconds = readdirSync(directory).map(
    (file) => (JSON.parse(readFileSync(join(directory, file), 'utf8')) as Counts).seconds ?? 0,
  );
  console.log(`\nTime of all cells: ${Math.round(seconds.reduce((a, b) => a + b, 0))} s.`);
}

const [command, directory = 'coverage', part = '0', parts = '1', tests = '4000', seed = '20261125'] =
  process.argv.slice(2);
if (command === 'table') table(directory);
else {
  mkdirSync(directory, { recursive: true });
  cells.forEach((cell, index) => {
    const file = join(directory, `${cell.id}.json`);
    if (index % Number(parts) !== Number(part) || existsSync(file)) return;
    const counts = runCell(cell, Number(tests), Number(seed) + 1_000_000 * index);
    writeFileSync(file, JSON.stringify(counts, null, 1));
    console.error(`${cell.kind}, ${cell.name}: ${counts.seconds!.toFixed(0)} s`);
  });
}
