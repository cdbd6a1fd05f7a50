/**
 * How long control charts run before they signal: without a shift (the false alarms) and after one (the delay), by simulation
 * with the charts of the project, beside the exact run length where there is one; and how well the start of a shift is found.
 * Figures: control-charts.md.
 *
 *   npx esbuild bench/control-charts.ts --bundle --platform=node --format=esm --outfile=FILE.mjs
 *   node FILE.mjs [runs a cell, default 20000] [seed, default 20261125]
 */
import { stepChange } from '../src/statistics/control-chart/change-point.ts';
import { cusumChart, shiftStart } from '../src/statistics/control-chart/cusum.ts';
import { ewmaChart, ewmaHalfWidth } from '../src/statistics/control-chart/ewma.ts';
import { individualsLimits, movingRanges } from '../src/statistics/control-chart/individuals.ts';
import { outside } from '../src/statistics/control-chart/limits.ts';
import {
  cusumRunLength,
  ewmaRunLength,
  shewhartRunLength,
} from '../src/statistics/control-chart/run-length.ts';
import { runRulesLength } from '../src/statistics/control-chart/run-rule-length.ts';
import {
  nelsonRules,
  type RunRule,
  signalsOf,
  westernElectricRules,
} from '../src/statistics/control-chart/run-rules.ts';
import {
  meanRangeLimits,
  meanSpreadLimits,
  rangeOf,
  standardDeviationOf,
} from '../src/statistics/control-chart/subgroups.ts';
import { type RandomStream, randomStream } from '../src/statistics/random/random-stream.ts';
import { mean } from '../src/statistics/summary/moments.ts';

const runs = Number(process.argv[2] ?? 20000);
const seed = Number(process.argv[3] ?? 20261125);
const shifts = [0, 0.5, 1, 2];

type Draw = () => number;
/** A chart for one run: the place of the first signal among these points, or −1. */
type Chart = (random: RandomStream) => (points: readonly number[]) => number;

/** Points from one to the first signal, drawn in lots that double. */
function runLength(first: (points: readonly number[]) => number, draw: Draw): number {
  const points: number[] = [];
  for (let lot = 64; ; lot *= 2) {
    for (let i = 0; i < lot; i++) points.push(draw());
    const at = first(points);
    if (at !== -1) return at + 1;
    if (points.length > 1e6) return points.length;
  }
}

const firstOf = (places: readonly number[]) => places[0] ?? -1;
const known = { centre: 0, lower: -3, upper: 3 };
const cusum =
  (decision: number): Chart =>
  () =>
  (points) =>
    cusumChart(points, { target: 0, allowance: 0.5, decision }).findIndex((p) => p.signal !== null);
const design = { target: 0, sigma: 1, weight: 0.2, width: 2.962 };
const rules =
  (list: readonly RunRule[]): Chart =>
  () =>
  (points) => {
    // A long lot is looked at in pieces: the rules see 15 points at most.
    for (let from = 0; from < points.length; from += 100) {
      const before = Math.max(0, from - 15);
      const piece = points.slice(before, from + 100);
      const places = list.flatMap((rule) => signalsOf(rule, piece)).filter((at) => before + at >= from);
      if (places.length > 0) return before + Math.min(...places);
    }
    return -1;
  };
const { WE1, WE2, WE3, WE4 } = westernElectricRules as Record<string, RunRule & { kind: 'one-side' }>;

const charts: [string, Chart, ((shift: number) => number) | null][] = [
  ['individuals, 3 sigma', () => (points) => firstOf(outside(points, known)), (s) => shewhartRunLength(3, s)],
  [
    'moving range, D4 (known sigma)',
    () => (points) => {
      const upper = 3.2665319 * 1.1283792;
      const at = firstOf(outside(movingRanges(points), { centre: 0, lower: 0, upper }));
      return at === -1 ? -1 : at + 1;
    },
    null,
  ],
  ['CUSUM k = 0.5, h = 4', cusum(4), (s) => cusumRunLength(0.5, 4, s)],
  ['CUSUM k = 0.5, h = 5', cusum(5), (s) => cusumRunLength(0.5, 5, s)],
  [
    'EWMA 0.2, 2.962, limits of the long run',
    () => (points) => {
      const half = ewmaHalfWidth(design, Infinity);
      return ewmaChart(points, design).findIndex((p) => Math.abs(p.value) > half);
    },
    (s) => ewmaRunLength(0.2, 2.962, s),
  ],
  [
    'EWMA 0.2, 2.962, limits from the first point',
    () => (points) => ewmaChart(points, design).findIndex((p) => p.signal),
    null,
  ],
  [
    'Western Electric rules 1 to 4',
    rules(Object.values(westernElectricRules)),
    (s) => runRulesLength([WE1!, WE2!, WE3!, WE4!], s),
  ],
  ['Nelson rules 1 to 8', rules(Object.values(nelsonRules)), null],
];

function meanAndError(lengths: readonly number[]): { average: number; error: number } {
  const average = mean(lengths);
  return { average, error: standardDeviationOf(lengths) / Math.sqrt(lengths.length) };
}

console.log(
  '| chart | shift in sigma | mean points to the signal | Monte Carlo error | exact | off by errors |',
);
console.log('| --- | --- | --- | --- | --- | --- |');
let cell = 0;
for (const [name, chart, exact] of charts) {
  for (const shift of shifts) {
    cell++;
    const lengths = Array.from({ length: runs }, (_, i) => {
      const random = randomStream(seed, cell * 1_000_000 + i);
      return runLength(chart(random), () => random.normal() + shift);
    });
    const { average, error } = meanAndError(lengths);
    const truth = exact?.(shift);
    const off = truth === undefined ? '' : ((average - truth) / error).toFixed(1);
    console.log(
      `| ${name} | ${shift} | ${average.toPrecision(4)} | ${error.toPrecision(2)} | ${truth?.toPrecision(5) ?? ''} | ${off} |`,
    );
  }
}

console.log(
  '\n| individuals, limits of so many base points | outside among the next 200, of 1000 | runs with none outside |',
);
console.log('| --- | --- | --- |');
for (const base of [10, 25, 100]) {
  cell++;
  const outs = Array.from({ length: runs }, (_, i) => {
    const random = randomStream(seed, cell * 1_000_000 + i);
    const draw = (n: number) => Array.from({ length: n }, () => random.normal());
    return outside(draw(200), individualsLimits(draw(base)).individuals).length;
  });
  const none = outs.filter((count) => count === 0).length / runs;
  console.log(`| ${base} | ${(5 * mean(outs)).toFixed(1)} | ${Math.round(100 * none)} % |`);
}

console.log(
  '\n| subgroups of 5, limits of 25 base subgroups | shift of the mean | mean subgroups to a signal of either chart | error |',
);
console.log('| --- | --- | --- | --- |');
for (const [name, limitsOf, spreadOf] of [
  ['X̄–R', meanRangeLimits, rangeOf],
  ['X̄–S', meanSpreadLimits, standardDeviationOf],
] as const) {
  for (const shift of [0, 0.5, 1]) {
    cell++;
    const lengths = Array.from({ length: runs / 4 }, (_, i) => {
      const random = randomStream(seed, cell * 1_000_000 + i);
      const group = (level: number) => Array.from({ length: 5 }, () => level + random.normal());
      const limits = limitsOf(Array.from({ length: 25 }, () => group(0)));
      for (let n = 1; ; n++) {
        const own = group(shift);
        const out = outside([mean(own)], limits.mean).length + outside([spreadOf(own)], limits.spread).length;
        if (out > 0 || n > 1e5) return n;
      }
    });
    const { average, error } = meanAndError(lengths);
    console.log(`| ${name} | ${shift} | ${average.toPrecision(4)} | ${error.toPrecision(2)} |`);
  }
}

console.log(
  '\n| shift after 50 points, found by CUSUM 0.5/5 | place by the sum: mean error | place by the step: mean error | within one point (sum, step) | range holds the place |',
);
console.log('| --- | --- | --- | --- | --- |');
const settings = { target: 0, allowance: 0.5, decision: 5 };
for (const shift of [1, 1.5, 2, 3]) {
  cell++;
  const errors: { sum: number; step: number; held: boolean }[] = [];
  for (let i = 0; errors.length < runs / 4; i++) {
    const random = randomStream(seed, cell * 1_000_000 + i);
    const points = Array.from({ length: 400 }, (_, t) => random.normal() + (t < 50 ? 0 : shift));
    const start = shiftStart(cusumChart(points, settings), settings);
    // A false alarm before the shift is none of the shift's finding.
    if (start === null || start.signal < 50) continue;
    const step = stepChange(points.slice(0, start.signal + 1), 0, 1);
    errors.push({ sum: start.start - 50, step: step.start - 50, held: step.from <= 50 && step.to >= 50 });
  }
  const share = (good: (e: (typeof errors)[number]) => boolean) =>
    `${Math.round((100 * errors.filter(good).length) / errors.length)} %`;
  console.log(
    `| ${shift} | ${mean(errors.map((e) => e.sum)).toFixed(2)} | ${mean(errors.map((e) => e.step)).toFixed(2)} | ` +
      `${share((e) => Math.abs(e.sum) <= 1)}, ${share((e) => Math.abs(e.step) <= 1)} | ${share((e) => e.held)} |`,
  );
}
