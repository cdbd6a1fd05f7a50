import { describe, expect, it } from 'vitest';
import { type Drawn, drawn, type Replicates } from '../../../src/statistics/calibration/replicates.ts';
import { randomStream } from '../../../src/statistics/random/random-stream.ts';
import { staircase } from './walk.ts';

describe('drawn', () => {
  it('gives tests whose ratio of chances weighs them into those of another strength', () => {
    const drawing = drawn(staircase(20, 1, -2));
    const size = 8000;
    const [from, to] = [
      { location: 0, scale: 1.2 },
      { location: 0.15, scale: 1.1 },
    ];
    const near = drawing.at(from, size, randomStream(3));
    const direct = drawing.at(to, size, randomStream(4));
    const weights = ratios(drawing, near, to);
    const alike = new Float64Array(size).fill(1);
    expect(Math.abs(weights.reduce((sum, w) => sum + w, 0) / size - 1)).toBeLessThan(0.05);
    for (const value of [-0.4, 0.15, 0.6]) {
      const weighted = shareAbove(near, weights, value);
      // Monte Carlo error of the difference at most 0.009.
      expect(Math.abs(weighted - shareAbove(direct, alike, value))).toBeLessThan(0.035);
    }
  });

  it('draws the same tests for the same stream, and others for another', () => {
    const drawing = drawn(staircase(20, 1, 0));
    const draw = (seed: number) => [
      ...drawing.at({ location: 0, scale: 1 }, 50, randomStream(seed)).supremum,
    ];
    expect(draw(1)).toEqual(draw(1));
    expect(draw(1)).not.toEqual(draw(2));
  });
});

function ratios(drawing: Drawn, tests: Replicates, to: { location: number; scale: number }): Float64Array {
  const under = new Float64Array(tests.size);
  const weights = new Float64Array(tests.size);
  drawing.logChancesAt(tests.strength, tests, under);
  drawing.logChancesAt(to, tests, weights);
  return weights.map((value, t) => Math.exp(value - under[t]!));
}

/** Share of the weight on tests whose best median lies above a value. */
function shareAbove({ size, location }: Replicates, weights: Float64Array, value: number): number {
  let above = 0;
  let all = 0;
  for (let t = 0; t < size; t++) {
    all += weights[t]!;
    if (location[t]! > value) above += weights[t]!;
  }
  return above / all;
}
