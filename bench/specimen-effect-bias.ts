/**
 * Bias of the median by the specimen effect against the mean of the noted heights, for 6, 8 and 12 rising-height tyres.
 *
 * True median 500 mm, several spreads between tyres and from hit to hit, starts and steps. Each cell draws the same number
 * of tests, stream by number; tests without a finite estimate (failures and survivals overlap at no more than one level)
 * are counted and left out of both columns. Figures with their Monte Carlo error: specimen-effect-bias.md.
 *
 *   npx esbuild bench/specimen-effect-bias.ts --bundle --platform=node --format=esm --outfile=FILE.mjs
 *   node FILE.mjs [tests a cell, default 1000] [seed, default 20261125]
 */
import { laws } from '../src/statistics/laws/laws.ts';
import { fitLocationScale } from '../src/statistics/likelihood/fit.ts';
import { gatherObservations } from '../src/statistics/likelihood/observation.ts';
import { fitKnownShare, fitSpecimenEffect } from '../src/statistics/specimen-effect/fit.ts';
import { drawRisingHeight } from './rising-height.ts';

const tests = Number(process.argv[2] ?? 1000);
const seed = Number(process.argv[3] ?? 20261125);

/** [between, within, start, step, damage]: the rows of rising-height series, and mixes between their extremes. */
const plans = [
  [40, 0, 350, 25, 0],
  [40, 0, 350, 50, 0],
  [30, 30, 350, 25, 0],
  [30, 30, 350, 50, 0],
  [20, 35, 350, 25, 0],
  [0, 40, 350, 10, 0],
  [0, 40, 350, 25, 0],
  [0, 40, 350, 50, 0],
  [40, 0, 350, 25, 0.01],
  [40, 0, 350, 25, 0.02],
  [30, 30, 350, 25, 0.01],
] as const;

class Moments {
  n = 0;
  sum = 0;
  squares = 0;
  add(x: number): void {
    this.n++;
    this.sum += x;
    this.squares += x * x;
  }
  text(): string {
    const mean = this.sum / this.n;
    const sd = Math.sqrt(this.squares / this.n - mean * mean);
    return `${mean >= 0 ? '+' : '−'}${Math.abs(mean).toFixed(1)} ± ${(sd / Math.sqrt(this.n)).toFixed(1)} (${sd.toFixed(0)})`;
  }
}

console.log(
  '| between | within | start/step | damage | tyres | no estimate | noted heights | one threshold a tyre | specimen effect | share known | untold |',
);
console.log('| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |');
for (const plan of plans) {
  const [between, within, start, step, damage] = plan;
  const truth = between ** 2 / (between ** 2 + within ** 2);
  for (const tyres of [6, 8, 12]) {
    const noted = new Moments();
    const threshold = new Moments();
    const effect = new Moments();
    const known = new Moments();
    let untold = 0;
    for (let i = 0; i < tests; i++) {
      const histories = drawRisingHeight(seed, i, tyres, plan);
      const fit = fitSpecimenEffect(histories, { scale: 'identity', damage });
      if (fit.kind !== 'spreads-told' && fit.kind !== 'spreads-untold') continue;
      noted.add(histories.reduce((sum, h) => sum + h.at(-1)!.level, 0) / tyres - 500);
      effect.add(fit.location - 500);
      if (fit.kind === 'spreads-untold') untold++;
      const rows = histories.map((h) => ({
        lower: h.at(-2)?.level ?? -Infinity,
        upper: h.at(-1)!.level,
        count: 1,
      }));
      const plain = fitLocationScale(gatherObservations(rows, 'identity'), laws.normal.standard);
      if (plain.kind === 'exists') threshold.add(plain.location - 500);
      const held = fitKnownShare(histories, { scale: 'identity', damage }, truth);
      if (held !== null && 'location' in held) known.add(held.location - 500);
    }
    const none = ((100 * (tests - effect.n)) / tests).toFixed(0);
    console.log(
      `| ${between} | ${within} | ${start}/${step} | ${100 * damage} % | ${tyres} | ${none} % | ${noted.text()} | ${threshold.text()} | ` +
        `${effect.text()} | ${known.text()} | ${((100 * untold) / effect.n).toFixed(0)} % |`,
    );
  }
}
