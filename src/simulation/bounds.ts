import { hitsAllowed, plannedLevels } from '../impact/rules/method-rules.ts';
import { bestLine, liesAbove } from '../statistics/calibration/best-line.ts';
import type { Tail } from '../statistics/calibration/critical-values.ts';
import { type NullSpread, nullStrength } from '../statistics/calibration/null-strength.ts';
import { isTabulated, tabulatedCriticals } from '../statistics/calibration/tabulated-criticals.ts';
import type { ProfileBasis } from '../statistics/likelihood/constrained.ts';
import { likelihoodRatioCritical } from '../statistics/likelihood/critical.ts';
import type { Design } from './design.ts';
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

/** Calibrated limits of a design, where they can be had for thousands of tests. */
export interface CalibratedLimits {
  readonly beside: Limits;
  /** Whether there are critical values for a share failed at a confidence. */
  has(p: number, level: number): boolean;
}

/**
 * The calibrated limits that `analyze` gives, for the designs that its table of critical values has: one up-and-down series
 * of a set number of drops in equal steps on the scale of a normal law, one hit a tyre, no limit of the rig in the way.
 * One value is looked at, where `analyze` seeks the limits themselves: the same but for limits further out than eight
 * half-widths of the profile interval, which are open there. Null for other designs.
 */
export function calibratedLimits(design: Design): CalibratedLimits | null {
  const { protocol, rig, energyPerLevel } = design;
  const { method, distribution, stop, sites } = protocol;
  const isOnce = sites.each === 'new-spot' && hitsAllowed(protocol) === 1;
  if (method !== 'up-and-down' || !isOnce || protocol.energy !== 'potential') return null;
  if (distribution !== (protocol.step?.kind === 'ratio' ? 'lognormal' : 'normal')) return null;
  const drops = stop?.drops;
  if (drops === undefined || Object.values(stop ?? {}).filter((count) => count !== undefined).length > 1)
    return null;
  const { at, lowest, highest } = plannedLevels(protocol, rig);
  const room = Math.min(drops, ROOM);
  if (-lowest < room || highest < room) return null;
  const y = (index: number) => {
    const energy = at(index) * energyPerLevel;
    return distribution === 'lognormal' ? Math.log(energy) : energy;
  };
  const test = { drops, start: y(0), step: y(1) - y(0) };
  const spread: NullSpread = { reading: 'hits', step: test.step, isSequential: true };
  const criticals = tabulatedCriticals(test);
  return {
    has: (p, level) => isTabulated(drops, p, level),
    beside(basis, p, x, level) {
      const here = basis.sample.scale === 'log' ? Math.log(x) : x;
      const { strength, value } = nullStrength(basis, spread, p, here);
      const root = Math.sqrt(Math.max(0, 2 * (basis.supremum - value)));
      const critical = (tail: Tail) => criticals({ p, y: here, strength, level, tail });
      const isAbove = liesAbove(bestLine(basis), basis.law.quantile(p), here);
      return {
        boundAbove: isAbove && root > critical('above'),
        boundBelow: !isAbove && root > critical('below'),
        held: root <= critical('both'),
      };
    },
  };
}

/** Steps between the start and a limit of the rig from which a walk is free (as src/impact/estimates/repeatable.ts has it). */
const ROOM = 8;
