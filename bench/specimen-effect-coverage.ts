/**
 * How often the nominal 95 % profile interval of the median by the specimen effect holds in rising-height tests, spreads
 * unknown. Tests without a finite estimate are left out and counted. Figures: specimen-effect-bias.md.
 *
 *   npx esbuild bench/specimen-effect-coverage.ts --bundle --platform=node --format=esm --outfile=FILE.mjs
 *   node FILE.mjs [tests a cell, default 300] [seed, default 20261125]
 */
import { specimenQuantileInterval } from '../src/statistics/specimen-effect/profile.ts';
import { drawRisingHeight } from './rising-height.ts';

const tests = Number(process.argv[2] ?? 300);
const seed = Number(process.argv[3] ?? 20261125);

console.log('| between | within | start/step | tyres | no estimate | held | median width |');
console.log('| --- | --- | --- | --- | --- | --- | --- |');
for (const plan of [
  [40, 0, 350, 25, 0],
  [30, 30, 350, 25, 0],
  [0, 40, 350, 25, 0],
  [30, 30, 350, 50, 0],
] as const) {
  for (const tyres of [6, 12]) {
    let held = 0;
    const widths: number[] = [];
    for (let i = 0; i < tests; i++) {
      const interval = specimenQuantileInterval(drawRisingHeight(seed, i, tyres, plan), {
        scale: 'identity',
      });
      if ('kind' in interval) continue;
      if (interval.lower <= 500 && interval.upper >= 500) held++;
      widths.push(interval.upper - interval.lower);
    }
    widths.sort((a, b) => a - b);
    const share = held / widths.length;
    const error = Math.sqrt((share * (1 - share)) / widths.length);
    console.log(
      `| ${plan[0]} | ${plan[1]} | ${plan[2]}/${plan[3]} | ${tyres} | ${Math.round(100 - (100 * widths.length) / tests)} % | ` +
        `${(100 * share).toFixed(1)} ± ${(100 * error).toFixed(1)} % | ${Math.round(widths[widths.length >> 1]!)} mm |`,
    );
  }
}
