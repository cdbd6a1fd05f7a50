import type { LawName } from '../../statistics/law.ts';
import { laws } from '../../statistics/laws/laws.ts';
import { prepareProfile } from '../../statistics/likelihood/constrained.ts';
import { likelihoodRatioCritical } from '../../statistics/likelihood/critical.ts';
import { gatherObservations, type Observation } from '../../statistics/likelihood/observation.ts';
import { profileFailure } from '../../statistics/likelihood/profile.ts';

/** The share failed by a distance, in km, with its profile-likelihood interval. */
export interface LifeBandPoint {
  readonly life: number;
  readonly lower: number;
  readonly upper: number;
}

const POINTS = 41;

/**
 * Pointwise interval of the share failed over the distances that were run and a little beyond, evenly on ln km: the band
 * of a probability plot. Made for reports only, since each point costs a search.
 *
 * @param level of the two-sided intervals.
 */
export function lifeBand(
  lives: readonly Observation[],
  distribution: LawName,
  level: number,
): LifeBandPoint[] {
  const ends = lives
    .flatMap(({ lower, upper }) => [lower, upper])
    .filter((km) => km > 0 && Number.isFinite(km));
  if (ends.length === 0) return [];
  const { standard, scale } = laws[distribution];
  const basis = prepareProfile(gatherObservations(lives, scale), standard);
  const critical = likelihoodRatioCritical(level, 2);
  const least = ends.reduce((low, km) => Math.min(low, km), Infinity) / 1.3;
  const most = ends.reduce((high, km) => Math.max(high, km), 0) * 1.3;
  return Array.from({ length: POINTS }, (_, i) => {
    const life = least * (most / least) ** (i / (POINTS - 1));
    const { failure } = profileFailure(basis, life, critical);
    return { life, lower: failure.lower.value ?? 0, upper: failure.upper.value ?? 1 };
  });
}
