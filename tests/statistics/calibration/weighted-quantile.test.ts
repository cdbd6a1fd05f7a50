import { describe, expect, it } from 'vitest';
import { weightedQuantile } from '../../../src/statistics/calibration/weighted-quantile.ts';

describe('weightedQuantile', () => {
  it('counts one draw more than there are', () => {
    // Davison and Hinkley (1997), equation 4.11: of 19 draws the largest is the critical value at 95 %.
    const values = Float64Array.from({ length: 19 }, (_, i) => i + 1);
    expect(weightedQuantile(values, new Float64Array(19).fill(1), 0.95)).toBeCloseTo(19, 4);
    expect(weightedQuantile(values, new Float64Array(19).fill(1), 0.9)).toBeCloseTo(18, 4);
  });

  it('says that too few draws exclude nothing', () => {
    expect(weightedQuantile(Float64Array.of(1, 2, 3), Float64Array.of(1, 1, 1), 0.95)).toBe(Infinity);
  });

  it('takes a weight for so many draws, in any order', () => {
    const values = Float64Array.of(3, 1, 2);
    // Worked by hand: as 9 draws, 3 of each and in thirds; 0.7 · (9 + 3)/9 … of the sum lies at 3, 0.4 at 2.
    expect(weightedQuantile(values, Float64Array.of(3, 3, 3), 0.7)).toBeCloseTo(3, 4);
    expect(weightedQuantile(values, Float64Array.of(3, 3, 3), 0.4)).toBeCloseTo(2, 4);
    expect(weightedQuantile(values, Float64Array.of(0.5, 8, 0.5), 0.5)).toBeCloseTo(1, 4);
  });
});
