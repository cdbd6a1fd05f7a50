import { type CalibratedLimits, calibratedQuantile } from '../../statistics/calibration/calibrate.ts';
import { rungsOf } from '../../statistics/calibration/rungs.ts';
import { simulatedCriticals } from '../../statistics/calibration/simulated-criticals.ts';
import { isTabulated, tabulatedCriticals } from '../../statistics/calibration/tabulated-criticals.ts';
import type { ProfileBasis } from '../../statistics/likelihood/constrained.ts';
import type { RepeatableTest } from './repeatable.ts';

/** Seed of all simulated critical values, of the table's too: fixed, so that a log gives the same limits every time. */
export const CALIBRATION_SEED = 20261125;

/** Simulated tests at each strength that is drawn from: a Monte Carlo error of a limit of some 4 % of the half-width. */
const EACH = 300;

/**
 * Calibrated limits of any quantile of one test: from the table of critical values where it has the test, share and
 * level, else by simulating the test. Each is found once.
 */
export function calibratedLimits(
  basis: ProfileBasis,
  { experiment, tabulated }: RepeatableTest,
): (p: number, level: number, sides: 1 | 2) => CalibratedLimits {
  const known = new Map<string, CalibratedLimits>();
  let simulated: ((p: number, level: number, sides: 1 | 2) => CalibratedLimits) | null = null;

  function bySimulation() {
    const criticals = simulatedCriticals(experiment, { seed: CALIBRATION_SEED, each: EACH });
    const rungs = rungsOf(basis, experiment);
    return (p: number, level: number, sides: 1 | 2) =>
      calibratedQuantile(basis, experiment, criticals, p, level, sides, rungs);
  }

  function found(p: number, level: number, sides: 1 | 2): CalibratedLimits {
    if (tabulated !== null && isTabulated(tabulated.drops, p, level))
      return calibratedQuantile(basis, experiment, tabulatedCriticals(tabulated), p, level, sides);
    simulated ??= bySimulation();
    return simulated(p, level, sides);
  }

  return (p, level, sides) => {
    const key = `${p} ${level} ${sides}`;
    const limits = known.get(key) ?? found(p, level, sides);
    known.set(key, limits);
    return limits;
  };
}
