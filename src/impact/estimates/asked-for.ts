import type { StrengthEstimate, StrengthFit } from './strength.ts';

/** What a quantity may be asked of: the likelihood's strength, or that of fresh tyres to one hit, which has no one spread. */
type Strength = Pick<StrengthFit, 'quantile'> & Partial<Pick<StrengthFit, 'spread'>>;

/** A quantity of a drop test that a specification may limit. */
export interface AskedFor {
  readonly quantity: string;
  /** Share failed; for quantiles. */
  readonly probability: number | null;
  readonly confidence: number;
}

/** The median as a level that can be set: a height, or a falling mass where the protocol varies that. */
export interface LevelScale {
  readonly quantity: 'medianFailureHeight' | 'medianFailureMass';
  readonly unit: 'mm' | 'kg';
  /** mm, or kg, for a joule. */
  readonly perEnergy: number;
}

/**
 * Estimate and one-sided bounds of a quantity, in J, in mm or kg for a level, of ln E for the spread of laws on it; null
 * for a quantity that this drop test does not give.
 *
 * @param level where one falling mass (or one height) served all drops; null otherwise.
 */
export function askedForEstimate(
  fit: Strength,
  { quantity, probability, confidence }: AskedFor,
  level: LevelScale | null,
): StrengthEstimate | null {
  switch (quantity) {
    case 'medianFailureEnergy':
      return fit.quantile(0.5, confidence, 1);
    case 'failureEnergyQuantile':
      return probability === null ? null : fit.quantile(probability, confidence, 1);
    case 'energySpread':
      return fit.spread?.(confidence, 1) ?? null;
    case 'medianFailureHeight':
    case 'medianFailureMass':
      return level?.quantity === quantity ? scaled(fit.quantile(0.5, confidence, 1), level.perEnergy) : null;
    default:
      return null;
  }
}

/** An estimate in another unit. */
export function scaled(found: StrengthEstimate, factor: number): StrengthEstimate {
  const times = (value: number | null) => (value === null ? null : value * factor);
  return {
    value: times(found.value),
    standardError: times(found.standardError),
    lower: times(found.lower),
    upper: times(found.upper),
    interval: found.interval,
    why: found.why,
  };
}
