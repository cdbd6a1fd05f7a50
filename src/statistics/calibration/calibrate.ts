import type { ProfileBasis } from '../likelihood/constrained.ts';
import { likelihoodRatioCritical } from '../likelihood/critical.ts';
import { fromScale, toScale } from '../likelihood/observation.ts';
import { profileQuantile } from '../likelihood/profile.ts';
import { bestLine, liesAbove } from './best-line.ts';
import type { CriticalValues, Tail } from './critical-values.ts';
import { crossing } from './crossing.ts';
import type { Strength } from './draw.ts';
import { type NullSpread, nullStrength } from './null-strength.ts';

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
 */
export function calibratedQuantile(
  basis: ProfileBasis,
  spread: NullSpread,
  criticals: CriticalValues,
  p: number,
  level: number,
  sides: 1 | 2,
): CalibratedLimits {
  const { law, supremum, sample, unit } = basis;
  if (!Number.isFinite(supremum) || sample.size === 0) return { lower: null, upper: null };
  const critical = likelihoodRatioCritical(level, sides);
  const profile = profileQuantile(basis, p, critical);
  const best = bestLine(basis);
  const z = law.quantile(p);

  /** By how much the root of the statistic at y exceeds its critical value. */
  function excess(y: number, tail: Tail): number {
    const { strength, value } = nullStrength(basis, spread, p, y);
    const root = Math.sqrt(Math.max(0, 2 * (supremum - value)));
    const towards = tail === 'both' || liesAbove(best, z, y) === (tail === 'above');
    return (towards ? root : -root) - criticals({ p, y, strength, level, tail });
  }

  function limit(value: number | null, side: -1 | 1): number | null {
    if (value === null) return null;
    const end = toScale(value, sample.scale);
    const middle = best.location + best.scale * z;
    const centre = Number.isFinite(middle) ? middle : end - side * unit;
    const half = Math.max(Math.abs(end - centre), 1e-3 * spread.step);
    const tail = sides === 2 ? 'both' : side < 0 ? 'above' : 'below';
    const factor = crossing((x) => excess(centre + side * x * half, tail), Math.sqrt(critical), FARTHEST);
    return factor === null ? null : fromScale(centre + side * factor * half, sample.scale);
  }

  return { lower: limit(profile.lower.value, -1), upper: limit(profile.upper.value, 1) };
}

/** The strengths at the profile limits of the median and the 10 % point, and a little beyond: where questions will fall. */
export function likelyStrengths(basis: ProfileBasis, spread: NullSpread): Strength[] {
  const best = bestLine(basis);
  const found: Strength[] = [];
  for (const p of [0.5, 0.1]) {
    const middle = best.location + best.scale * basis.law.quantile(p);
    const { lower, upper } = profileQuantile(basis, p, likelihoodRatioCritical(0.95, 2));
    for (const { value } of [lower, upper]) {
      if (value === null) continue;
      const end = toScale(value, basis.sample.scale);
      const beyond = Number.isFinite(middle) ? 0.25 * (end - middle) : 0;
      found.push(nullStrength(basis, spread, p, end + beyond).strength);
    }
  }
  return found;
}
