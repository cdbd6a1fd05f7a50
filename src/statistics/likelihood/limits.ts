import type { StandardLaw } from '../laws/standard-law.ts';
import { countAt, type Ends } from './existence.ts';
import type { Sample } from './observation.ts';

/*
 * The two limits of the likelihood over all scales. As the scale runs to ∞ every level gets the same failure probability;
 * as it runs to 0 there is one threshold that all strengths share, and only the level at the threshold may be mixed.
 */

/**
 * The largest log-likelihood with one failure probability F(z) at all levels, z in [from, to]. −∞ where an observation is
 * closed on both sides, which then has probability 0.
 */
export function constantSupremum(ends: Ends, law: StandardLaw, from: number, to: number): number {
  const { failed, survived, closed } = ends;
  if (closed > 0) return -Infinity;
  const best = law.quantile(failed / (failed + survived));
  return binomial(law, Math.min(Math.max(best, from), to), failed, survived);
}

/**
 * The largest log-likelihood with scale 0 and a threshold strictly between `from` and `to` (fitted scale): 0 where a gap
 * is open to it, the binomial one of the tied level where that is the only threshold, −∞ where none fits, ∞ where exact
 * values coincide at it.
 */
export function thresholdSupremum(
  sample: Sample,
  ends: Ends,
  law: StandardLaw,
  from: number,
  to: number,
): number {
  const low = Math.max(ends.highestLower, from);
  const high = Math.min(ends.lowestUpper, to);
  if (low < high) return 0;
  const { highestLower: level, lowestUpper } = ends;
  if (level !== lowestUpper || !(level > from && level < to)) return -Infinity;
  if (ends.exact) return Infinity;
  const { failed, total } = countAt(sample, level);
  return binomial(law, law.quantile(failed / total), failed, total - failed);
}

/** The log-likelihood with scale 0 and the threshold at y, where the failure probability at y itself is F(z). */
export function thresholdAt(sample: Sample, ends: Ends, law: StandardLaw, y: number, z: number): number {
  if (y < ends.highestLower || y > ends.lowestUpper) return -Infinity;
  if (ends.exact) return Infinity;
  const { failed, total } = countAt(sample, y);
  return binomial(law, z, failed, total - failed);
}

/** failed·log F(z) + survived·log S(z), where 0·(−∞) is 0. */
function binomial(law: StandardLaw, z: number, failed: number, survived: number): number {
  return (failed > 0 ? failed * law.logCdf(z) : 0) + (survived > 0 ? survived * law.logSf(z) : 0);
}
