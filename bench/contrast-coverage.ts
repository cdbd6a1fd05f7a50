/**
 * How often limits of differences and ratios of two medians hold that are made of calibrated ones: two up-and-down tests
 * of normal strength, grids of levels shifted evenly, tests without an estimate included. Figures: contrast-coverage.md.
 *
 *   npx esbuild bench/contrast-coverage.ts --bundle --platform=node --format=esm --outfile=dist/contrast-coverage.mjs
 *   node dist/contrast-coverage.mjs [pairs, default 2000] [seed, default 20261125]
 */
import { calibratedQuantile } from '../src/statistics/calibration/calibrate.ts';
import { cellsOf, visitCells } from '../src/statistics/calibration/cells.ts';
import {
  boundedQuantile,
  differenceOfQuantiles,
  ratioOfQuantiles,
} from '../src/statistics/calibration/contrast.ts';
import { drawing } from '../src/statistics/calibration/draw.ts';
import { emptyTrials } from '../src/statistics/calibration/experiment.ts';
import { tabulatedCriticals } from '../src/statistics/calibration/tabulated-criticals.ts';
import { normal } from '../src/statistics/laws/normal.ts';
import { prepareProfile } from '../src/statistics/likelihood/constrained.ts';
import { gatherObservations } from '../src/statistics/likelihood/observation.ts';
import { randomStream } from '../src/statistics/random/random-stream.ts';
import { steppedTest } from './invented-tests.ts';

/** Medians of the first construction, in its spreads: far enough above nought for a ratio. */
const MEDIAN = 10;

interface Side {
  readonly drops: number;
  readonly step: number;
  readonly spread: number;
  readonly median: number;
}

/** One test, started at `MEDIAN` with its grid shifted, and the limits of its median: 95 %, both kinds. */
function quantileOf({ drops, step, spread, median }: Side, offset: number, seed: number, index: number) {
  const start = MEDIAN + offset * step;
  const experiment = steppedTest({ drops, step, start });
  const trials = emptyTrials(drops);
  const draw = drawing(experiment, { location: median, scale: spread });
  draw(randomStream(seed, index), trials, new Float64Array(drops));
  const { lower, upper } = cellsOf(experiment);
  const seen: { lower: number; upper: number; count: number }[] = [];
  visitCells(trials, 'hits', (cell) => seen.push({ lower: lower[cell]!, upper: upper[cell]!, count: 1 }));
  const basis = prepareProfile(gatherObservations(seen, 'identity'), normal);
  const table = tabulatedCriticals({ drops, start, step });
  const limits = (sides: 1 | 2) =>
    boundedQuantile(basis, 0.5, calibratedQuantile(basis, experiment, table, 0.5, 0.95, sides));
  return { two: limits(2), one: limits(1) };
}

function row(name: string, first: Side, second: Side, pairs: number, seed: number): void {
  const counts = { difference: 0, ratio: 0, lower: 0, upper: 0, open: 0, bounded: 0, width: 0 };
  const difference = second.median - first.median;
  const ratio = second.median / first.median;
  for (let k = 0; k < pairs; k++) {
    // Two grids that are shifted independently: a lattice of good spread.
    const a = quantileOf(first, (k + 0.5) / pairs - 0.5, seed, 2 * k);
    const b = quantileOf(second, ((k * 0.6180339887498949) % 1) - 0.5, seed, 2 * k + 1);
    const both = differenceOfQuantiles(a.two, b.two);
    counts.difference += Number(holds(both, difference));
    counts.ratio += Number(holds(ratioOfQuantiles(a.two, b.two, 'identity'), ratio));
    const bounds = differenceOfQuantiles(a.one, b.one);
    counts.lower += Number(bounds.lower === null || bounds.lower <= difference);
    counts.upper += Number(bounds.upper === null || bounds.upper >= difference);
    if (both.lower === null || both.upper === null) counts.open += 1;
    else {
      counts.bounded += 1;
      counts.width += both.upper - both.lower;
    }
  }
  const share = (count: number) => ((100 * count) / pairs).toFixed(1);
  console.log(
    `| ${[name, share(counts.difference), share(counts.lower), share(counts.upper), share(counts.ratio), share(counts.open), (counts.width / counts.bounded).toFixed(2)].join(' | ')} |`,
  );
}

function holds({ lower, upper }: { lower: number | null; upper: number | null }, value: number): boolean {
  return (lower === null || lower <= value) && (upper === null || upper >= value);
}

const [pairs = '2000', seed = '20261125'] = process.argv.slice(2);
console.log('| | difference | lower | upper | ratio | unbounded | mean width |');
console.log('| --- | --- | --- | --- | --- | --- | --- |');
const side = (drops: number, step = 1, median = MEDIAN, spread = 1): Side => ({
  drops,
  step,
  spread,
  median,
});
const cases: [string, Side, Side][] = [
  ...[15, 20, 30, 50].flatMap((drops): [string, Side, Side][] =>
    [0.5, 1, 2].map((step) => [`2 × ${drops}, step ${step}, equal`, side(drops, step), side(drops, step)]),
  ),
  ['2 × 30, step 1, second 1 higher', side(30), side(30, 1, MEDIAN + 1)],
  ['2 × 30, step 1, second 3 higher', side(30), side(30, 1, MEDIAN + 3)],
  ['15 and 50, step 1', side(15), side(50)],
  ['50 and 15, step 1', side(50), side(15)],
  ['2 × 30, step 1, spreads 1 and 2', side(30), side(30, 1, MEDIAN, 2)],
  ['20 and 30, steps 1 and 2, spreads 1 and 2, second 2 higher', side(20), side(30, 2, MEDIAN + 2, 2)],
];
cases.forEach(([name, first, second], index) => {
  row(name, first, second, Number(pairs), Number(seed) + 1_000_003 * index);
});
