// Makes the table of critical values of up-and-down tests, src/statistics/calibration/critical-table.ts: for every number
// of drops, scale and offset of TABLE_AXES the quantiles of the signed root of the likelihood ratio among simulated tests.
//   npx esbuild bench/critical-table.ts --bundle --platform=node --format=esm --outfile=dist/critical-table.mjs
//   node dist/critical-table.mjs part INDEX > part-INDEX.json   for each INDEX of drops, 0 to 6 (each may run on a core)
//   node dist/critical-table.mjs join part-*.json > src/statistics/calibration/critical-table.ts
// 8,000 tests a cell, seed 20261125; about 9 minutes of one core for all parts. Monte Carlo error of a root at 95 %: 0.02.
import { readFileSync } from 'node:fs';
import { drawn } from '../src/statistics/calibration/replicates.ts';
import { signedRoots } from '../src/statistics/calibration/signed-roots.ts';
import { TABLE_AXES } from '../src/statistics/calibration/table-axes.ts';
import { normal } from '../src/statistics/laws/normal.ts';
import { randomStream } from '../src/statistics/random/random-stream.ts';
import { steppedTest } from './invented-tests.ts';

const SEED = 20261125;
const TESTS = 8000;
const HAIR = 1e-7;
const { drops, scales, offsets, shares, levels } = TABLE_AXES;

function part(index: number): number[] {
  const n = drops[index]!;
  const found: number[] = [];
  scales.forEach((scale, i) => {
    offsets.forEach((offset, j) => {
      for (const p of shares) {
        const experiment = steppedTest({ drops: n, step: 1, start: offset });
        // One seed a cell, so that parts may be made in any order.
        const seed = SEED + (index * scales.length + i) * offsets.length + j;
        const drawing = drawn(experiment);
        const tests = drawing.at({ location: -scale * normal.quantile(p), scale }, TESTS, randomStream(seed));
        const findRoots = signedRoots(drawing, 1);
        const roots = new Float64Array(TESTS);
        findRoots(tests, HAIR, p, roots);
        if (Number.isInteger(offset)) {
          // A level at the value itself: whether a test that has only this level in common lies above or below it is
          // undecided, so that half of the tests are read from a hair to each side.
          const other = new Float64Array(TESTS);
          findRoots(tests, -HAIR, p, other);
          for (let t = 0; t < TESTS; t += 2) roots[t] = other[t]!;
        }
        const sorted = {
          both: roots.map(Math.abs).sort(),
          above: roots.slice().sort(),
          below: roots.map((root) => -root).sort(),
        };
        for (const level of levels) {
          const rank = Math.ceil(level * (TESTS + 1)) - 1;
          for (const tail of TABLE_AXES.tails)
            found.push(Math.round(1000 * Math.max(0, sorted[tail][rank]!)));
        }
      }
    });
  });
  return found;
}

const [what, ...given] = process.argv.slice(2);
if (what === 'part') process.stdout.write(JSON.stringify(part(Number(given[0]))));
else {
  const all = given.flatMap((file) => JSON.parse(readFileSync(file, 'utf8')) as number[]);
  const bytes = Buffer.from(Uint16Array.from(all).buffer).toString('base64');
  const lines = bytes.match(/.{1,110}/g)!.map((line) => `  '${line}'`);
  process.stdout.write(`// Made by bench/critical-table.ts: do not edit.

/** Roots of critical values in thousandths, 16 bits each, by drops, scale, offset, share, level and tail of TABLE_AXES. */
export const CRITICAL_TABLE =
${lines.join(' +\n')};
`);
}
