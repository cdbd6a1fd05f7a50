import { describe, expect, it } from 'vitest';
import { sizeForGain, visibleGain } from '../../src/simulation/gain.ts';
import { precisionAt, sizeForPrecision } from '../../src/simulation/precision.ts';
import { leastSize, MOST_SIZE } from '../../src/simulation/sizes.ts';
import { staircase } from './designs.ts';

// Handbook arithmetic on the measured precision sd(m)·√n/σ = 1.42 (SEN-11): to see a gain of one spread between two
// up-and-down tests with 80 % at two-sided 5 % takes 2 · 1.42² · (1.960 + 0.842)² = 31.7 drops a group.

const SIMULATING = { tests: 4000, seed: 5 };
const QUESTION = { power: 0.8, confidence: 0.95 };

describe('sizes by simulation', () => {
  it('take 32 drops a group to see a gain of one spread, within Monte Carlo error', () => {
    const { design, assumed } = staircase({ drops: 30 }, 1, 0);
    const found = sizeForGain(design, 1 / 1000, assumed, QUESTION, SIMULATING)!;
    // The power rises by 1.2 points a drop there: its error of 0.5 points, and that of the critical difference, are a drop.
    expect(Math.abs(found.size - 31.7)).toBeLessThan(3);
    expect(found.power.value).toBeGreaterThanOrEqual(0.8);
    expect(found.drops).toBe(2 * found.size);
  });

  it('see about one spread with 32 drops a group, and more with fewer', () => {
    const near = staircase({ drops: 30 }, 1, 0);
    const at = (size: number) => {
      const moved = { ...near.assumed, median: 50 };
      const shifted = { ...near.design, protocol: { ...near.design.protocol, start: 50 } };
      return visibleGain(shifted, size, moved, QUESTION, SIMULATING)!.gain * 50;
    };
    expect(Math.abs(at(32) - 1)).toBeLessThan(0.08);
    expect(at(16)).toBeGreaterThan(at(32));
  });

  it('come within 1.96 · 1.42/√30 spreads of the median with 30 drops', () => {
    const { design, assumed } = staircase({ drops: 30 }, 1, 0);
    const { within } = precisionAt(design, 30, assumed, 0.95, SIMULATING);
    expect(Math.abs(within.value - (1.96 * 1.42) / Math.sqrt(30))).toBeLessThan(3.5 * within.error + 0.01);
    const found = sizeForPrecision(design, within.value, assumed, 0.95, SIMULATING)!;
    expect(Math.abs(found.size - 30)).toBeLessThanOrEqual(2);
  });
});

describe('leastSize', () => {
  it('finds the first that is enough, or says that none is', () => {
    for (const least of [3, 4, 17, 256, 499, 500]) expect(leastSize(3, (size) => size >= least)).toBe(least);
    expect(leastSize(3, () => false)).toBeNull();
    expect(MOST_SIZE).toBe(500);
  });
});
