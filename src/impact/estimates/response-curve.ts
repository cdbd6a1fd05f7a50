import type { ResponseCurve } from '../../result/report.ts';
import type { LawName } from '../../statistics/law.ts';
import { laws } from '../../statistics/laws/laws.ts';
import { prepareProfile } from '../../statistics/likelihood/constrained.ts';
import { likelihoodRatioCritical } from '../../statistics/likelihood/critical.ts';
import { gatherObservations, type Observation } from '../../statistics/likelihood/observation.ts';
import { profileFailure } from '../../statistics/likelihood/profile.ts';

/** As smooth as a picture of 500 pixels needs. */
const POINTS = 61;
/** The curve goes a little beyond the drops, by this share of their span. */
const BEYOND = 0.15;

/**
 * The share that fails over the energy, with the profile-likelihood interval of that share at each of some sixty
 * energies: pointwise, not for the whole curve at once. It needs no best fit; without one the curve itself is null and
 * the band is left. Costs a search at each point, so it is made for reports only.
 *
 * @param observations in J.
 * @param level of the two-sided intervals, such as 0.95.
 * @param also energies that the picture must reach, such as limits.
 * @returns null where nothing was observed.
 */
export function responseCurve(
  observations: readonly Observation[],
  distribution: LawName,
  level: number,
  also: readonly number[] = [],
): ResponseCurve | null {
  const ends = observations
    .flatMap(({ lower, upper }) => [lower, upper])
    .concat(also)
    .filter((energy) => Number.isFinite(energy) && energy > 0);
  if (observations.length === 0 || ends.length === 0) return null;
  const { standard, scale } = laws[distribution];
  const basis = prepareProfile(gatherObservations(observations, scale), standard);
  const critical = likelihoodRatioCritical(level, 2);
  const least = ends.reduce((low, energy) => Math.min(low, energy), Infinity);
  const most = ends.reduce((high, energy) => Math.max(high, energy), 0);
  const room = most > least ? (most - least) * BEYOND : most * BEYOND;
  const from = Math.max(least - room, least * 0.5);
  const { fit } = basis;
  return {
    distribution,
    level,
    points: Array.from({ length: POINTS }, (_, i) => {
      const energy = from + ((most + room - from) * i) / (POINTS - 1);
      const { failure } = profileFailure(basis, energy, critical);
      const place = scale === 'log' ? Math.log(energy) : energy;
      return {
        energy,
        failure: fit.kind === 'exists' ? standard.cdf((place - fit.location) / fit.scale) : null,
        lower: failure.lower.value ?? 0,
        upper: failure.upper.value ?? 1,
      };
    }),
  };
}
