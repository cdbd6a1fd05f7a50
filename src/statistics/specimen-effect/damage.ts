import { chiSquaredLaw } from '../laws/gamma.ts';
import type { NoEstimate } from '../likelihood/existence.ts';
import { orthogonalise } from '../regression/orthogonal.ts';
import { findRoot } from '../root.ts';
import { fitPosed, type SpecimenOptions } from './fit.ts';
import { goldenSection } from './golden-section.ts';
import { gatherPatterns, type History } from './history.ts';
import { pose } from './share.ts';

/** The share of strength lost per earlier hit, as the data say it; or why they do not. */
export type DamageEstimate =
  | {
      readonly kind: 'estimated';
      readonly damage: number;
      /** Profile-likelihood interval; the ends of the range that was searched, 0 and 0.3, where it reaches them. */
      readonly lower: number;
      readonly upper: number;
      readonly logLikelihood: number;
    }
  | { readonly kind: 'not-identified'; readonly why: string }
  | NoEstimate;

const LARGEST_DAMAGE = 0.3;

/**
 * Whether damage per hit can be told from height: null, or why not. The columns 1, level and number of earlier hits must be
 * independent over the hits, and some number of earlier hits must go with two levels: in series of one start and one set of
 * steps the level fixes the number, and damage cannot be told from a weaker tyre.
 */
export function whyDamageUntold(histories: readonly History[]): string | null {
  const hits = histories.flat();
  const rows = hits.map((h) => Float64Array.of(1, h.level, h.earlier));
  const levels = new Map<number, Set<number>>();
  for (const h of hits) levels.set(h.earlier, (levels.get(h.earlier) ?? new Set()).add(h.level));
  if (![...levels.keys()].some((k) => k > 0))
    return 'no specimen was hit twice, so damage per hit does not come in';
  const mixed = [...levels.values()].some((set) => set.size > 1);
  if (mixed && orthogonalise(rows).kind === 'independent') return null;
  return 'height and number of hits go together throughout, so damage per hit cannot be told from height; a second start or step would settle it, or state the damage';
}

/**
 * Estimates the damage per hit by maximum likelihood over 0 to 0.3, with both spreads free at each value, by golden
 * section; its interval from the profile. Slow (some hundred fits).
 */
export function estimateDamage(histories: readonly History[], options: SpecimenOptions): DamageEstimate {
  const why = whyDamageUntold(histories);
  if (why !== null) return { kind: 'not-identified', why };
  const { scale, nodes = 25, confidence = 0.95 } = options;
  let failure: NoEstimate | null = null;
  const value = (damage: number): number => {
    const problem = pose(gatherPatterns(histories, scale, damage), nodes);
    const fit = 'kind' in problem ? problem : fitPosed(problem);
    if ('kind' in fit) {
      failure = fit;
      return -Infinity;
    }
    return fit.logLikelihood;
  };
  const grid = [0, 0.01, 0.03, 0.06, 0.1, 0.2, LARGEST_DAMAGE];
  const values = grid.map(value);
  let index = 0;
  for (const [i, v] of values.entries()) if (v > values[index]!) index = i;
  if (values[index] === -Infinity) return failure!;
  const low = grid[Math.max(0, index - 1)]!;
  const high = grid[Math.min(grid.length - 1, index + 1)]!;
  const inner = goldenSection(value, low, high, 1e-5);
  // The ends of the range are never tried by the section.
  const damage = inner.value > values[index]! ? inner.at : grid[index]!;
  const top = Math.max(inner.value, values[index]!);
  const drop = chiSquaredLaw(1).quantile(confidence) / 2;
  const excess = (d: number) => value(d) - top + drop;
  const end = (limit: number) =>
    excess(limit) >= 0 ? limit : findRoot(excess, damage, limit, { tolerance: 1e-4 });
  return { kind: 'estimated', damage, lower: end(0), upper: end(LARGEST_DAMAGE), logLikelihood: top };
}
