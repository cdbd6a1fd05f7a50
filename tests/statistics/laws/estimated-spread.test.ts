import { expect, it } from 'vitest';
import { logMeanOverSpread } from '../../../src/statistics/laws/estimated-spread.ts';

// E[S²] = 1, E[1] = 1 and E[S] = √(2/ν) Γ((ν + 1)/2)/Γ(ν/2): textbook moments of χ/√ν; for ν = 2, E[S] = √π/2.
it('gives the moments of an estimated spread', () => {
  for (const degrees of [1, 2, 5, 29, 400]) {
    expect(Math.abs(logMeanOverSpread(degrees, () => 0, 0))).toBeLessThan(2e-14);
    expect(Math.abs(logMeanOverSpread(degrees, (s) => 2 * Math.log(s), 0))).toBeLessThan(2e-14);
  }
  expect(logMeanOverSpread(2, Math.log, 0)).toBeCloseTo(Math.log(Math.sqrt(Math.PI) / 2), 14);
});

it('is nothing where the function is', () => {
  expect(logMeanOverSpread(5, () => -Infinity, 0)).toBe(-Infinity);
});
