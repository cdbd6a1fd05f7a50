import type { ProfileBasis } from '../likelihood/constrained.ts';

/**
 * Where the likelihood of a test is best, in a form that holds for tests without an estimate too: a quantile at F(z)
 * lies at location + scale·z, the ends of the line where nothing failed or nothing survived, at the threshold (the
 * middle of a gap) with scale 0 where one fits everything. Where one chance for all levels is best, location is NaN and
 * `turn` is F⁻¹ of that chance: lower quantiles then lie at −∞, higher ones at ∞.
 */
export interface BestLine {
  location: number;
  scale: number;
  turn: number;
}

export function bestLine({ fit, ends, law }: ProfileBasis): BestLine {
  switch (fit.kind) {
    case 'exists':
      return { location: fit.location, scale: fit.scale, turn: Number.NaN };
    case 'wrong-direction': {
      const turn = law.quantile(ends.failed / (ends.failed + ends.survived));
      return { location: Number.NaN, scale: 0, turn };
    }
    case 'no-failure':
      return { location: Infinity, scale: 0, turn: Number.NaN };
    case 'all-failed':
      return { location: -Infinity, scale: 0, turn: Number.NaN };
    default:
      return { location: 0.5 * (ends.highestLower + ends.lowestUpper), scale: 0, turn: Number.NaN };
  }
}

/** Whether the best quantile at F(z) lies above y. */
export function liesAbove(line: BestLine, z: number, y: number): boolean {
  return Number.isNaN(line.location) ? z > line.turn : line.location + line.scale * z > y;
}
