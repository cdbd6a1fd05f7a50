import { describe, expect, it } from 'vitest';
import { wearLines } from '../../../src/endurance/wear/wear-lines.ts';

const readings = [
  { distance: 0, depth: 3.0 },
  { distance: 3, depth: 2.8 },
  { distance: 6, depth: 2.58 },
  { distance: 9, depth: 2.39 },
];

describe('wearLines', () => {
  // R 4.2.2, predict(lm(mm ~ km), interval = "confidence"): tests/reference/scripts/wear-lines.R.
  it('has the interval of the line that R gives', () => {
    const [line] = wearLines([{ specimen: 'T-1', readings }], 1, 0.95);
    const { points } = line!;
    for (const [i, km, depth, lower, upper] of [
      [0, 0, 3, 2.968824319143, 3.03117568086],
      [15, 29.2682926829 / 2, 2, 1.940704792668, 2.05929520733],
      [30, 29.2682926829, 1, 0.861163776496, 1.1388362235],
    ] as const) {
      expect(points[i]!.distance).toBeCloseTo(km, 8);
      expect(points[i]!.depth).toBeCloseTo(depth, 8);
      expect(points[i]!.lower).toBeCloseTo(lower, 8);
      expect(points[i]!.upper).toBeCloseTo(upper, 8);
    }
  });

  it('ends at the longest distance read without a limit, and never farther than five times that', () => {
    expect(wearLines([{ specimen: 'T-1', readings }], null, 0.95)[0]!.points.at(-1)!.distance).toBe(9);
    const slow = readings.map(({ distance }, i) => ({ distance, depth: 3 - 0.0001 * i }));
    expect(wearLines([{ specimen: 'T-1', readings: slow }], 1, 0.95)[0]!.points.at(-1)!.distance).toBe(45);
  });

  it('draws no line through fewer than three distances', () => {
    expect(wearLines([{ specimen: 'T-1', readings: readings.slice(0, 2) }], 1, 0.95)).toEqual([]);
  });
});
