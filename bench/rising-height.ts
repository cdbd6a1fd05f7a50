import { randomStream } from '../src/statistics/random/random-stream.ts';
import type { History, Hit } from '../src/statistics/specimen-effect/history.ts';

/** Spread between tyres, spread from hit to hit, start, step (mm), and the share of strength that each earlier hit takes. */
export type Plan = readonly [between: number, within: number, start: number, step: number, damage: number];

/** One simulated test: tyres of median 500 mm, each hit higher and higher until it fails. Stream by seed and number. */
export function drawRisingHeight(
  seed: number,
  index: number,
  tyres: number,
  [between, within, start, step, damage]: Plan,
): History[] {
  const random = randomStream(seed, index);
  return Array.from({ length: tyres }, () => {
    const strength = 500 + between * random.normal();
    const hits: Hit[] = [];
    for (let level = start, earlier = 0; ; level += step, earlier++) {
      const failed = level >= (strength + within * random.normal()) * (1 - damage) ** earlier;
      hits.push({ level, failed, earlier });
      if (failed) return hits;
    }
  });
}
