import { describe, expect, it } from 'vitest';
import {
  guardedLevel,
  guardedShare,
  restsOnShare,
} from '../../../src/statistics/calibration/assumed-share.ts';
import { staircase } from './walk.ts';

describe('the guard for an assumed share', () => {
  it('keeps a tenth of the risk back', () => {
    // By hand: 0.9 · 0.05 = 0.045 and 0.9 · 0.1 = 0.09.
    expect(guardedLevel(0.95)).toBeCloseTo(0.955, 12);
    expect(guardedLevel(0.9)).toBeCloseTo(0.91, 12);
  });

  it('says the same of a share of tests and of a level', () => {
    expect(guardedShare(1 - guardedLevel(0.95))).toBeCloseTo(0.05, 12);
    expect(guardedShare(0.99)).toBe(1);
  });

  it('is for hits that share a specimen only', () => {
    expect(restsOnShare(staircase(5, 1, 0))).toBe(false);
    expect(restsOnShare(staircase(5, 1, 0, { share: 0.7 }))).toBe(true);
    expect(restsOnShare(staircase(5, 1, 0, { share: 1, reading: 'rises' }))).toBe(false);
  });
});
