import { binomialLaw } from '../laws/counts.ts';
import { findRoot } from '../root.ts';
import { orderResponses, type Response } from './response.ts';

/** Limits for the share failed at a level. */
export interface ShareLimits {
  readonly level: number;
  readonly lower: number;
  readonly upper: number;
}

/**
 * Limits for the share failed at each level that use only that it never falls with the level (Morris 1988, Biometrics
 * 44, 1083–1092, from memory; the intervals that Oron and Flournoy 2017 take). Levels below speak for the lower limit:
 * results are ordered by the failures at the level itself, ties by those one level down, and so on; the lower limit is
 * the share θ, the same at all these levels, at which a result as high or higher has probability (1 − confidence)/2:
 *
 *   Gᵢ(θ) = P(Yᵢ > yᵢ) + P(Yᵢ = yᵢ)·Gᵢ₋₁(θ),   G₁(θ) = P(Y₁ ≥ y₁)
 *
 * The upper limit is the mirror image from the levels above. They hold for independent drops at fixed levels; where the
 * rule chooses levels by the outcomes, as up-and-down does, only approximately. Counts must be whole.
 */
export function orderLimits(responses: readonly Response[], confidence: number): ShareLimits[] {
  const ordered = orderResponses(responses);
  const risk = (1 - confidence) / 2;
  const failures = ordered.map((r) => r.failures);
  const drops = ordered.map((r) => r.drops);
  const survivals = drops.map((n, i) => n - failures[i]!).reverse();
  const mirrored = [...drops].reverse();
  return ordered.map((r, i) => ({
    level: r.level,
    lower: lowerLimit(failures.slice(0, i + 1), drops, risk),
    upper: 1 - lowerLimit(survivals.slice(0, ordered.length - i), mirrored, risk),
  }));
}

/** The share at which results at least as high as `failures`, read from the last level down, have probability `risk`. */
function lowerLimit(failures: readonly number[], drops: readonly number[], risk: number): number {
  if (failures.every((y) => y === 0)) return 0;
  const excess = (share: number): number => chancesAtLeast(failures, drops, share).at(-1)! - risk;
  return findRoot(excess, 0, 1, { tolerance: 1e-12 });
}

/** Gᵢ(θ) of `orderLimits` for every level: it rises with θ, so Gᵢ(θ) < risk says that the lower limit there is above θ. */
export function chancesAtLeast(
  failures: readonly number[],
  drops: readonly number[],
  share: number,
): number[] {
  let atLeast = 1;
  return failures.map((failed, i) => {
    const law = binomialLaw(drops[i]!, share);
    const above = law.sf(failed);
    atLeast = above + (law.sf(failed - 1) - above) * atLeast;
    return atLeast;
  });
}
