import { describe, expect, it } from 'vitest';
import { testCalibrated } from '../../../src/statistics/calibration/test-quantile.ts';
import { normal } from '../../../src/statistics/laws/normal.ts';
import { prepareProfile } from '../../../src/statistics/likelihood/constrained.ts';
import { gatherObservations } from '../../../src/statistics/likelihood/observation.ts';
import { staircase } from './walk.ts';

// 16 drops of an invented test, levels 1 apart from 0: failures and survivals overlap at 1 and 2.
const seen = [
  [0, 0, 3],
  [1, 2, 4],
  [2, 3, 2],
  [3, 2, 0],
].flatMap(([level, failed, survived]) => [
  ...(failed! > 0 ? [{ lower: -Infinity, upper: level!, count: failed! }] : []),
  ...(survived! > 0 ? [{ lower: level!, upper: Infinity, count: survived! }] : []),
]);
const basis = prepareProfile(gatherObservations(seen, 'identity'), normal);
const settings = { seed: 9, size: 999 };
const at = (y: number) => testCalibrated(basis, staircase(16, 1, 0), 0.5, y, settings);

describe('testCalibrated', () => {
  it('rejects nothing at the estimate and everything far off', () => {
    if (basis.fit.kind !== 'exists') throw new Error('the invented test has an estimate');
    expect(at(basis.fit.location).twoSided).toBeGreaterThan(0.95);
    expect(at(basis.fit.location - 4).above).toBeLessThan(0.05);
    expect(at(basis.fit.location + 4).below).toBeLessThan(0.05);
    expect(at(basis.fit.location - 4).below).toBeGreaterThan(0.95);
  });

  it('splits the two-sided share into its sides, about', () => {
    const { twoSided, above, below } = at(0.6);
    expect(above + below).toBeGreaterThanOrEqual(1);
    expect(above).toBeLessThan(below);
    expect(twoSided).toBeGreaterThan(above);
  });
});
