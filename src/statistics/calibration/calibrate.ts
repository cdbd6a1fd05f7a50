import type { ProfileBasis } from '../likelihood/constrained.ts';
import { likelihoodRatioCritical } from '../likelihood/critical.ts';
import { fromScale, toScale } from '../likelihood/observation.ts';
import { profileQuantile } from '../likelihood/profile.ts';
import { bestLine, liesAbove } from './best-line.ts';
import type { CriticalValues, Tail } from './critical-values.ts';
import { crossing } from './crossing.ts';
import { type NullSpread, nullStrength } from './null-strength.ts';
import type { Rung, Rungs } from './rungs.ts';

/** Limits on the original scale; null where unbounded. */
export interface CalibratedLimits {
  readonly lower: number | null;
  readonly upper: number | null;
}

/** How far from the estimate a limit is sought, in half-widths of the profile interval; further out is unbounded. */
const FARTHEST = 8;

/**
 * Likelihood-ratio limits of the quantile at share failed p with the critical value of the test as it was made: a value y
 * is within them where its statistic is no larger than in `level` of tests at the strength that fits best with the
 * quantile at y (parametric bootstrap of the restricted fit; DiCiccio, Martin and Stern 2001, Can. J. Stat. 29, 67–76,
 * find it right to a higher order than χ²). One side: both one-sided bounds, from the signed root.
 *
 * Unbounded where the profile interval is, or where a limit would lie more than eight of its half-widths away.
 *
 * @param basis of the observations, on the fitted scale
 * @param rungs where critical values are asked for and read between; without them at every value that is tried
 */
export function calibratedQuantile(
  basis: ProfileBasis,
  spread: NullSpread,
  criticals: CriticalValues,
  p: number,
  level: number,
  sides: 1 | 2,
  rungs: Rungs | null = null,
): CalibratedLimits {
  const { law, supremum, sample, unit } = basis;
  if (!Number.isFinite(supremum) || sample.size === 0) return { lower: null, upper: null };
  const critical = likelihoodRatioCritical(level, sides);
  const profile = profileQuantile(basis, p, critical);
  const best = bestLine(basis);
  const z = law.quantile(p);

  /** By how much the root of the statistic at y exceeds its critical value. */
  function excess(y: number, tail: Tail, side: -1 | 1): number {
    const { strength, value } = nullStrength(basis, spread, p, y);
    const root = Math.sqrt(Math.max(0, 2 * (supremum - value)));
    const towards = tail === 'both' || liesAbove(best, z, y) === (tail === 'above');
    const at = (place: Rung) => criticals({ p, ...place, level, tail });
    const between = rungs?.(p, side, root) ?? null;
    if (between === null) return (towards ? root : -root) - at({ y, strength });
    const [below, above, weight] = between;
    return (towards ? root : -root) - ((1 - weight) * at(below) + weight * at(above));
  }

  function limit(value: number | null, side: -1 | 1): number | null {
    if (value === null) return null;
    const end = toScale(value, sample.scale);
    const middle = best.location + best.scale * z;
    const centre = Number.isFinite(middle) ? middle : end - side * unit;
    const half = Math.max(Math.abs(end - centre), 1e-3 * spread.step);
    const tail = sides === 2 ? 'both' : side < 0 ? 'above' : 'below';
    const factor = crossing(
      (x) => excess(centre + side * x * half, tail, side),
      Math.sqrt(critical),
      FARTHEST,
    );
    return factor === null ? null : fromScale(centre + side * factor * half, sample.scale);
  }

  return { lower: limit(profile.lower.value, -1), upper: limit(profile.upper.value, 1) };
}
