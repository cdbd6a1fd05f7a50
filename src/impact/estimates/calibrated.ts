import {
  type CalibratedLimits,
  calibratedQuantile,
  likelyStrengths,
} from '../../statistics/calibration/calibrate.ts';
import type { CriticalValues } from '../../statistics/calibration/critical-values.ts';
import { simulatedCriticals } from '../../statistics/calibration/simulated-criticals.ts';
import { isTabulated, tabulatedCriticals } from '../../statistics/calibration/tabulated-criticals.ts';
import type { ProfileBasis } from '../../statistics/likelihood/constrained.ts';
import type { RepeatableTest } from './repeatable.ts';

/** Seed of all simulated critical values, of the table's too: fixed, so that a log gives the same limits every time. */
export const CALIBRATION_SEED = 20261125;

/** Simulated tests at each strength that is drawn from. */
const EACH = 400;

/**
 * Calibrated limits of any quantile of one test: from the table of critical values where it has the test, share and
 * level, else by simulating the test. Each is found once.
 */
export function calibratedLimits(
  basis: ProfileBasis,
  { experiment, tabulated }: RepeatableTest,
): (p: number, level: number, sides: 1 | 2) => CalibratedLimits {
  const known = new Map<string, CalibratedLimits>();
  let simulated: CriticalValues | null = null;
  const criticalsFor = (p: number, level: number): CriticalValues => {
    if (tabulated !== null && isTabulated(tabulated.drops, p, level)) return tabulatedCriticals(tabulated);
    simulated ??= simulatedCriticals(
      experiment,
      basis.law,
      { seed: CALIBRATION_SEED, each: EACH },
      likelyStrengths(basis, experiment),
    );
    return simulated;
  };
  return (p, level, sides) => {
    const key = `${p} ${level} ${sides}`;
    const limits =
      known.get(key) ?? calibratedQuantile(basis, experiment, criticalsFor(p, level), p, level, sides);
    known.set(key, limits);
    return limits;
  };
}
