import { chiSquaredLaw } from '../laws/gamma.ts';
import { type Range, tailOf } from './proportion.ts';

/** Events with what they are counted over: flats and kilometres. */
export interface Count {
  readonly events: number;
  /** Above 0, in any unit; the rate is per unit. */
  readonly exposure: number;
}

/**
 * Exact limits of the mean of a Poisson count (Garwood 1936, Biometrika 28, 437–442): ½χ²(2k) and ½χ²(2k + 2). With no events the
 * lower limit is 0 and the upper 2.996 (one-sided 95 %) or 3.689 (two-sided).
 */
export function countLimits(events: number, level: number, sides: 1 | 2 = 2): Range {
  if (!(Number.isInteger(events) && events >= 0)) throw new RangeError(`${events} is no count of events`);
  const tail = tailOf(level, sides);
  return {
    lower: events === 0 ? 0 : 0.5 * chiSquaredLaw(2 * events).quantile(tail),
    upper: 0.5 * chiSquaredLaw(2 * events + 2).quantileOfSf(tail),
  };
}

/** Events per unit of exposure with exact limits. They take every event as independent of the others. */
export function poissonRate(
  { events, exposure }: Count,
  level: number,
  sides: 1 | 2 = 2,
): Range & { readonly rate: number } {
  checkExposure(exposure);
  const { lower, upper } = countLimits(events, level, sides);
  return { rate: events / exposure, lower: lower / exposure, upper: upper / exposure };
}

/** Throws a RangeError for an exposure that is not above 0. */
export function checkExposure(exposure: number): void {
  if (!(exposure > 0 && exposure < Infinity)) throw new RangeError(`exposure ${exposure} is not above 0`);
}
