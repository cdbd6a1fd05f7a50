import type { ProfileBasis } from '../likelihood/constrained.ts';
import { toScale } from '../likelihood/observation.ts';
import { profileQuantile } from '../likelihood/profile.ts';
import type { Strength } from './draw.ts';
import { type NullSpread, nullStrength } from './null-strength.ts';

/** A value of a quantile with the strength that is simulated for it. */
export interface Rung {
  readonly y: number;
  readonly strength: Strength;
}

/**
 * The two rungs that the root of a statistic lies between, and how far it is from the first to the second.
 *
 * @param side of the estimate on which the value lies
 * @returns null where there are none
 */
export type Rungs = (p: number, side: -1 | 1, root: number) => readonly [Rung, Rung, number] | null;

/** The root of the statistic at the first rung, and how much larger it is at each further one. */
const FIRST = 1.25;
const RATIO = 1.25;

/**
 * Rungs along the profile of each quantile, where the root of the statistic has grown by a quarter: critical values change
 * slowly on the way out, so that they are simulated at the two or three rungs about a limit and read between, which
 * spares simulations and evens their noise out. All levels, one side or two, share the rungs.
 */
export function rungsOf(basis: ProfileBasis, spread: NullSpread): Rungs {
  const known = new Map<string, Rung | null>();

  function rung(p: number, side: -1 | 1, k: number): Rung | null {
    const key = `${p} ${side} ${k}`;
    let found = known.get(key);
    if (found === undefined) {
      const { lower, upper } = profileQuantile(basis, p, (FIRST * RATIO ** k) ** 2);
      const value = side < 0 ? lower.value : upper.value;
      const y = value === null ? null : toScale(value, basis.sample.scale);
      found = y === null ? null : { y, strength: nullStrength(basis, spread, p, y).strength };
      known.set(key, found);
    }
    return found;
  }

  return (p, side, root) => {
    if (!(root > 0)) return null;
    const place = Math.log(root / FIRST) / Math.log(RATIO);
    const k = Math.floor(place);
    const below = rung(p, side, k);
    const above = rung(p, side, k + 1);
    return below === null || above === null ? null : [below, above, place - k];
  };
}
