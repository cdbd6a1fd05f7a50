import { describe, expect, it } from 'vitest';
import { levelsFrom, narrower } from '../../../src/impact/rules/levels.ts';

describe('levels', () => {
  it('additive: start + k·step (CONTRACT)', () => {
    const levels = levelsFrom(350, { kind: 'additive', size: 25 });
    expect([-2, 0, 1, 10].map(levels.at)).toEqual([300, 350, 375, 600]);
  });

  it('ratio: start·(1 + r)^k, without rounding (CONTRACT)', () => {
    const levels = levelsFrom(400, { kind: 'ratio', ratio: 0.05 });
    // By hand: 400·1.05 = 420, 400·1.1025 = 441, 400/1.05 = 380.952380952380952…
    expect(levels.at(1)).toBeCloseTo(420, 10);
    expect(levels.at(2)).toBeCloseTo(441, 10);
    expect(levels.at(-1)).toBeCloseTo(380.952380952381, 10);
  });

  it('rounds to a resolution only where the rig states one', () => {
    const levels = levelsFrom(400, { kind: 'ratio', ratio: 0.05 }, undefined, 0.5);
    expect([-1, 1, 3].map(levels.at)).toEqual([381, 420, 463]);
  });

  it('finds the nearest level, the lower one halfway', () => {
    const levels = levelsFrom(500, { kind: 'additive', size: 25 });
    expect([500, 512, 512.5, 513, 488, 487.5, 487].map(levels.nearest)).toEqual([0, 0, 0, 1, 0, -1, -1]);
    const ratio = levelsFrom(400, { kind: 'ratio', ratio: 0.05 });
    expect([400, 420.0000001, 430, 431, 381].map(ratio.nearest)).toEqual([0, 1, 1, 2, -1]);
  });

  it('stays within limits, a level on the limit included', () => {
    const levels = levelsFrom(500, { kind: 'additive', size: 25 }, { min: 450, max: 549 });
    expect([levels.lowest, levels.highest]).toEqual([-2, 1]);
    expect([-5, -2, 0, 1, 4].map(levels.within)).toEqual([-2, -2, 0, 1, 1]);
    const decimal = levelsFrom(0.3, { kind: 'additive', size: 0.1 }, { min: 0.1, max: 0.7 });
    expect([decimal.lowest, decimal.highest]).toEqual([-2, 4]);
  });

  it('never goes to nought or below', () => {
    expect(levelsFrom(100, { kind: 'additive', size: 50 }).lowest).toBe(-1);
    expect(levelsFrom(100, { kind: 'additive', size: 30 }).lowest).toBe(-3);
  });

  it('takes the narrower of two limits', () => {
    expect(narrower({ min: 100, max: null }, { min: 150, max: 900 })).toEqual({ min: 150, max: 900 });
    expect(narrower({ min: null, max: 800 }, { min: null, max: 900 })).toEqual({ min: null, max: 800 });
  });

  it('refuses a start or step that is not above nought', () => {
    expect(() => levelsFrom(0, { kind: 'additive', size: 25 })).toThrow(RangeError);
    expect(() => levelsFrom(500, { kind: 'ratio', ratio: Number.NaN })).toThrow(RangeError);
  });
});
