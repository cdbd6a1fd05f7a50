import { chancesAtLeast } from './order-limits.ts';
import { orderResponses, type Response } from './response.ts';

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
  const ordered = orderResponses(responses);
  const mirrored = ordered.toReversed();
  const risk = (1 - confidence) / 2;
  const drops = (of: readonly Response[]) => of.map((response) => response.drops);
  // Whether a limit lies beyond the share is asked at that share alone: no limit is sought.
  const failed = ordered.map((response) => response.failures);
  const survived = mirrored.map((response) => response.drops - response.failures);
  const fromBelow = chancesAtLeast(failed, drops(ordered), probability);
  const fromAbove = chancesAtLeast(survived, drops(mirrored), 1 - probability);
  const lower = mirrored.find((_, i) => fromAbove[i]! < risk)?.level ?? -Infinity;
  const upper = ordered.find((_, i) => fromBelow[i]! < risk)?.level ?? Infinity;
  // Where failures fall with the level beyond chance the two cross; what lies between is then what is in doubt.
  return lower > upper ? { lower: upper, upper: lower } : { lower, upper };
}
