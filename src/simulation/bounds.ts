import { CALIBRATION_SEED } from '../impact/estimates/calibrated.ts';
import { bestLine, liesAbove } from '../statistics/calibration/best-line.ts';
import type { CriticalValues, Tail } from '../statistics/calibration/critical-values.ts';
import { designedCriticals } from '../statistics/calibration/designed-criticals.ts';
import { nullStrength } from '../statistics/calibration/null-strength.ts';
import { isTabulated, tabulatedCriticals } from '../statistics/calibration/tabulated-criticals.ts';
import type { ProfileBasis } from '../statistics/likelihood/constrained.ts';
import { likelihoodRatioCritical } from '../statistics/likelihood/critical.ts';
import { toScale } from '../statistics/likelihood/observation.ts';
import type { Design } from './design.ts';
import { experimentOf } from './design-experiment.ts';
import { signedRoot } from './quantile-test.ts';

/** How the limits of a quantile lie beside one value, which is all that coverage and verdicts ask. */
export interface Beside {
  /** Whether the lower one-sided bound lies above the value, or the upper one below it. */
  readonly boundAbove: boolean;
  readonly boundBelow: boolean;
  /** Whether the two-sided interval holds it. */
  readonly held: boolean;
}

/** Limits of the quantile at share failed p beside x (original scale), at a confidence. */
export type Limits = (basis: ProfileBasis, p: number, x: number, level: number) => Beside;

/** By the profile likelihood, whose critical values are those of large samples. */
export const profileLimits: Limits = (basis, p, x, level) => {
  const root = signedRoot(basis, p, x);
  const one = Math.sqrt(likelihoodRatioCritical(level, 1));
  const two = Math.sqrt(likelihoodRatioCritical(level, 2));
  return { boundAbove: root > one, boundBelow: root < -one, held: Math.abs(root) <= two };
};

/** Calibrated limits of a design. */
export interface CalibratedLimits {
  /** Beside one of a few values, such as a limit. */
  readonly beside: Limits;
  /** Beside any value: critical values are read between those on a grid. */
  readonly besideAny: Limits;
}

/** Simulated tests behind each critical value: a Monte Carlo error of half a point on a level of 95 %. */
const EACH = 2000;

/**
 * The calibrated limits that `analyze` gives for tests of a design, by the table of critical values or by simulating the
 * design. One value is looked at, where `analyze` seeks the limits themselves: the same but for limits further out than
 * eight half-widths of the profile interval, which are open there. Null for designs that `analyze` does not calibrate.
 */
export function calibratedLimits(design: Design): CalibratedLimits | null {
  const made = experimentOf(design);
  if (made === null) return null;
  const { experiment, tabulated } = made;
  const settings = { seed: CALIBRATION_SEED, each: EACH };
  const table = tabulated && tabulatedCriticals(tabulated);
  const limitsBy = (simulated: CriticalValues): Limits => {
    const criticalsFor = (p: number, level: number) =>
      table !== null && isTabulated(tabulated!.drops, p, level) ? table : simulated;
    return (basis, p, x, level) => {
      const y = toScale(x, basis.sample.scale);
      const { strength, value } = nullStrength(basis, made.spreadOf(basis), p, y);
      const root = Math.sqrt(Math.max(0, 2 * (basis.supremum - value)));
      const criticals = criticalsFor(p, level);
      const critical = (tail: Tail) => criticals({ p, y, strength, level, tail });
      const isAbove = liesAbove(bestLine(basis), basis.law.quantile(p), y);
      return {
        boundAbove: isAbove && root > critical('above'),
        boundBelow: !isAbove && root > critical('below'),
        held: root <= critical('both'),
      };
    };
  };
  return {
    beside: limitsBy(designedCriticals(experiment, settings, 'each value')),
    besideAny: limitsBy(designedCriticals(experiment, settings, 'grid')),
  };
}
