import { describe, expect, it } from 'vitest';
import { crossing } from '../../../src/statistics/calibration/crossing.ts';

describe('crossing', () => {
  it.each([
    ['inside the profile limit', (x: number) => 2 * x - 1.3, 0.65],
    ['at it', (x: number) => 2 * x - 2, 1],
    ['beyond it', (x: number) => 2 * x - 2.6, 1.3],
    ['where the curve bends', (x: number) => 2 * Math.sqrt(x) - 2.4, 1.44],
    ['at a jump', (x: number) => (x < 1.17 ? -0.4 : 3), 1.17],
  ])('finds the change of sign %s', (_, f, root) => {
    expect(Math.abs(crossing(f, 2, 8)! - root)).toBeLessThan(0.012);
  });

  it('gives up where there is none within reach', () => {
    expect(crossing((x) => x - 9, 2, 8)).toBeNull();
    expect(crossing(() => -Infinity, 2, 8)).toBeNull();
  });

  it('asks for few values: each stands for a thousand simulated tests', () => {
    let asked = 0;
    crossing(
      (x) => {
        asked++;
        return 2 * Math.sqrt(x) - 2.3;
      },
      2,
      8,
    );
    expect(asked).toBeLessThanOrEqual(6);
  });
});
