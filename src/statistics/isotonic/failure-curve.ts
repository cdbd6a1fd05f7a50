import { fittedValues, poolAdjacent } from './pool-adjacent.ts';
import { orderResponses, type Response } from './response.ts';

/** A corner of a failure curve that is straight between corners: share failed `share` at `level`. */
export interface Corner {
  readonly level: number;
  readonly share: number;
  /** Drops behind the corner. */
  readonly drops: number;
}

/**
 * The isotonic failure curve: the share failed at each level, pooled so that it never falls with the level (the
 * non-parametric maximum-likelihood estimate; Ayer et al. 1955). A corner at every level.
 */
export function isotonicCurve(responses: readonly Response[]): Corner[] {
  const ordered = orderResponses(responses);
  const blocks = poolAdjacent(
    ordered.map((r) => r.failures),
    ordered.map((r) => r.drops),
  );
  const shares = fittedValues(blocks);
  return ordered.map((r, i) => ({ level: r.level, share: shares[i]!, drops: r.drops }));
}

/**
 * The centred isotonic failure curve (Oron and Flournoy 2017, Statistics in Biopharmaceutical Research 9, 258–267; the
 * rule as recalled): each pooled block becomes one corner at the mean of its levels, weighted by their drops, so that
 * the curve rises strictly between its corners.
 *
 * Ties: neighbours with the same share strictly between 0 and 1 are pooled like violators, whether they were equal
 * from the start or became so by pooling. Neighbours at 0 or at 1 are not ties but the edge of what a share can be;
 * each keeps its corner.
 */
export function centredIsotonicCurve(responses: readonly Response[]): Corner[] {
  const ordered = orderResponses(responses);
  const blocks = poolAdjacent(
    ordered.map((r) => r.failures),
    ordered.map((r) => r.drops),
    (share) => share > 0 && share < 1,
  );
  return blocks.map((b) => {
    let sum = 0;
    for (let i = b.from; i <= b.to; i++) sum += ordered[i]!.level * ordered[i]!.drops;
    const level = b.from === b.to ? ordered[b.from]!.level : sum / b.weight;
    return { level, share: b.value, drops: b.weight };
  });
}
