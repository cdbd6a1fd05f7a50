import { describe, expect, it } from 'vitest';
import { drawing } from '../../../src/statistics/calibration/draw.ts';
import { emptyTrials } from '../../../src/statistics/calibration/experiment.ts';
import { randomStream } from '../../../src/statistics/random/random-stream.ts';
import { pairs } from './walk.ts';

const SPECIMENS = 40_000;

function drawPairs(level: number, share: number) {
  const experiment = pairs(SPECIMENS, level, share);
  const trials = emptyTrials(experiment.mostDrops);
  const effects = new Float64Array(SPECIMENS);
  drawing(experiment, { location: 0, scale: 1 })(randomStream(7), trials, effects);
  let failed = 0;
  let both = 0;
  for (let i = 0; i < trials.size; i += 2) {
    failed += trials.failed[i]! + trials.failed[i + 1]!;
    both += trials.failed[i]! * trials.failed[i + 1]!;
  }
  return { failed: failed / trials.size, both: both / SPECIMENS };
}

// Monte Carlo errors: 0.0018 of a share of 80,000 hits, 0.0024 of a share of 40,000 specimens; the marks are four of them.
describe('drawing', () => {
  it.each([0, 0.5, 0.8])('fails each hit by the law, whatever the share between specimens (%f)', (share) => {
    // Φ(−1) = 0.158655, from any table of the normal law.
    expect(Math.abs(drawPairs(-1, share).failed - 0.158655)).toBeLessThan(0.0075);
  });

  it.each([0, 0.5, 0.8])('ties two hits at the median by 1/4 + asin(share)/2π (%f)', (share) => {
    // Sheppard (1899), Phil. Trans. R. Soc. A 192, 101–167: the quadrant probability of a bivariate normal law.
    const expected = 0.25 + Math.asin(share) / (2 * Math.PI);
    expect(Math.abs(drawPairs(0, share).both - expected)).toBeLessThan(0.0096);
  });
});
