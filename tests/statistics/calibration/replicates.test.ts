import { describe, expect, it } from 'vitest';
import { replicates } from '../../../src/statistics/calibration/replicates.ts';
import { staircase } from './walk.ts';

/** Share of the weight on tests whose best median lies above a value. */
function shareAbove(drawn: ReturnType<typeof replicates>, weights: Float64Array, value: number): number {
  let above = 0;
  let all = 0;
  for (let t = 0; t < drawn.size; t++) {
    all += weights[t]!;
    if (drawn.location[t]! > value) above += weights[t]!;
  }
  return above / all;
}

const perTwo = { mostSpecimens: 10, share: 0.5 };
const walk = staircase(20, 1, -2).walk;

describe('replicates', () => {
  it.each([
    ['one hit a specimen', staircase(20, 1, -2)],
    [
      'two hits a specimen, half the variance between',
      {
        ...staircase(20, 1, -2),
        ...perTwo,
        walk: ((fails, into) => {
          walk((level, drop) => fails(level, drop >> 1), into);
          for (let i = 0; i < into.size; i++) into.specimen[i] = i >> 1;
        }) as typeof walk,
      },
    ],
  ])('weighs tests drawn at two strengths into those of a third: %s', (_, experiment) => {
    const asked = { location: 0.15, scale: 1.1 };
    const near = replicates(experiment, 4000, 2, 3);
    near.add({ location: 0, scale: 1 });
    near.add({ location: 0.4, scale: 1.3 });
    const at = replicates(experiment, 8000, 1, 4);
    at.add(asked);
    const weights = new Float64Array(8000);
    for (const value of [-0.4, 0.15, 0.6]) {
      near.weigh(asked, weights);
      const weighted = shareAbove(near, weights, value);
      const direct = shareAbove(at, new Float64Array(8000).fill(1), value);
      // Monte Carlo error of the difference at most 0.009.
      expect(Math.abs(weighted - direct)).toBeLessThan(0.035);
    }
    expect(Math.abs(weights.reduce((sum, w) => sum + w, 0) / 8000 - 1)).toBeLessThan(0.05);
  });

  it('draws the same tests for the same seed, and others for another', () => {
    const draw = (seed: number) => {
      const drawn = replicates(staircase(20, 1, 0), 50, 1, seed);
      drawn.add({ location: 0, scale: 1 });
      return [...drawn.supremum];
    };
    expect(draw(1)).toEqual(draw(1));
    expect(draw(1)).not.toEqual(draw(2));
  });
});
