/**
 * Newton fits of grouped 30-drop up-and-down tests a second, on one core, over tests that have an estimate. R's glm fits
 * the same tests in a loop: bench/fits.R. Figures with date: fits.md.
 *
 * Median 0, spread 1, steps of one spread, start off by one spread at random, the grid anywhere. Drawn and written before
 * the clock runs; timed is what each program does from the counts level by level to median, spread and their covariance.
 *
 *   npx esbuild bench/fits.ts --bundle --platform=node --format=esm --outfile=FILE.mjs
 *   node FILE.mjs TESTS.csv [tests, default 20000] [seed, default 20261125]
 *   Rscript bench/fits.R TESTS.csv
 */
import { writeFileSync } from 'node:fs';
import { normal } from '../src/statistics/laws/normal.ts';
import { judgeExistence } from '../src/statistics/likelihood/existence.ts';
import { fitLocationScale } from '../src/statistics/likelihood/fit.ts';
import { gatherObservations } from '../src/statistics/likelihood/observation.ts';
import { randomStream } from '../src/statistics/random/random-stream.ts';

const [file = 'fits-tests.csv', count = '20000', seedText = '20261125'] = process.argv.slice(2);
const DROPS = 30;

interface Group {
  readonly level: number;
  failed: number;
  drops: number;
}

/** One test, level by level. */
function draw(test: number): Group[] {
  const stream = randomStream(Number(seedText), test);
  let level = stream.normal() + stream.uniform() - 0.5;
  const start = level;
  const groups = new Map<number, Group>();
  for (let drop = 0; drop < DROPS; drop++) {
    const index = Math.round(level - start);
    const group = groups.get(index) ?? { level: start + index, failed: 0, drops: 0 };
    groups.set(index, group);
    const failed = stream.normal() <= group.level;
    group.drops += 1;
    if (failed) group.failed += 1;
    level = group.level + (failed ? -1 : 1);
  }
  return [...groups.values()].sort((a, b) => a.level - b.level);
}

/** What the likelihood takes: failures and survivals of each level with their counts. */
function observationsOf(groups: readonly Group[]) {
  return groups.flatMap(({ level, failed, drops }) => [
    ...(failed > 0 ? [{ lower: -Infinity, upper: level, count: failed }] : []),
    ...(drops > failed ? [{ lower: level, upper: Infinity, count: drops - failed }] : []),
  ]);
}

const tests: Group[][] = [];
for (let test = 0; tests.length < Number(count); test++) {
  const groups = draw(test);
  if (judgeExistence(gatherObservations(observationsOf(groups), 'identity')).kind === 'exists')
    tests.push(groups);
}
const rows = tests.flatMap((groups, test) =>
  groups.map(({ level, failed, drops }) => [test, level, failed, drops].join(',')),
);
writeFileSync(file, `test,level,failed,drops\n${rows.join('\n')}\n`);

/** Fits all tests once; the sum keeps the work from being left out, and R must find the same one. */
function fitAll(): number {
  let sum = 0;
  for (const groups of tests) {
    const fit = fitLocationScale(gatherObservations(observationsOf(groups), 'identity'), normal);
    if (fit.kind === 'exists') sum += fit.location + fit.scale + fit.covariance.location;
  }
  return sum;
}

// Once to warm up, since R's functions are compiled already; then once on the clock.
fitAll();
// Time of the processor, not of the wall: other work on the machine must not count.
const from = process.cpuUsage();
const sum = fitAll();
const spent = process.cpuUsage(from);
const seconds = (spent.user + spent.system) / 1e6;
console.log(
  `${tests.length} tests: ${seconds.toFixed(3)} s, ${Math.round(tests.length / seconds)} fits a second; sum ${sum.toPrecision(10)}, mean location and scale of the first 4000 ${means()}`,
);

/** Of the first 4000 tests, which R fits too: the two programs must agree. */
function means(): string {
  const first = tests
    .slice(0, 4000)
    .map((groups) => fitLocationScale(gatherObservations(observationsOf(groups), 'identity'), normal));
  const found = first.flatMap((fit) => (fit.kind === 'exists' ? [fit] : []));
  const mean = (of: (fit: (typeof found)[number]) => number) =>
    (found.reduce((total, fit) => total + of(fit), 0) / found.length).toFixed(10);
  return `${mean(({ location }) => location)} ${mean(({ scale }) => scale)}`;
}
