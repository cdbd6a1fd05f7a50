import { orderLimits } from './order-limits.ts';
import type { Response } from './response.ts';

/** An interval of levels; unbounded ends are ∓Infinity. */
export interface LevelInterval {
  readonly lower: number;
  readonly upper: number;
}

/**
 * A two-sided interval for the level at which the share `probability` fails, by inverting the limits of `orderLimits`
 * without interpolation: from the highest level whose upper limit is below that share to the lowest whose lower limit is
 * above it. It assumes no law, holds wherever those limits hold, and its ends are levels that were tested; with few drops
 * it is unbounded on one side or both.
 */
export function orderInterval(
  responses: readonly Response[],
  probability: number,
  confidence: number,
): LevelInterval {
  const limits = orderLimits(responses, confidence);
  const below = limits.filter((l) => l.upper < probability).map((l) => l.level);
  const above = limits.filter((l) => l.lower > probability).map((l) => l.level);
  const lower = Math.max(-Infinity, ...below);
  const upper = Math.min(Infinity, ...above);
  // Where failures fall with the level beyond chance the two cross; what lies between is then what is in doubt.
  return lower > upper ? { lower: upper, upper: lower } : { lower, upper };
}
