import { maximiseThrough, type ProfileBasis } from '../likelihood/constrained.ts';
import type { Strength } from './draw.ts';

/** What the spread of a simulated test goes by: an Experiment has it. */
export interface NullSpread {
  readonly reading: 'hits' | 'rises';
  /** Distance of neighbouring levels, on the fitted scale. */
  readonly step: number;
  /** Whether the next level depends on the outcomes before it. */
  readonly isSequential: boolean;
}

/** Observations that the spread costs: see calibration.md for what was tried. */
const LOST = { hits: 5, rises: 2 };
/** Least spread under a hypothesis, in steps; and the most, for sequential rules the usual most. */
const SEQUENTIAL = { least: 1 / 3, most: 3 };
const FIXED = { least: 1 / 2, most: 40 };

/**
 * The strength to simulate where a share p is held to have failed at y (fitted scale): the quantile lies at y, and the
 * scale is the one that fits best there, times n/(n − 5) for the bias of spreads in small samples (rises: n/(n − 2)).
 * Where the rule goes by the outcomes it is not below a third of a step, nor above 3 steps or the (enlarged) best scale of
 * all, whichever is more: far from the estimate the best scale runs off with y, and a walk whose steps are as nothing
 * would be simulated. Elsewhere it is not below half a step, and 40 steps stand for any larger spread.
 *
 * @returns the strength, and the log-likelihood of the best scale (before it is enlarged)
 */
export function nullStrength(
  basis: ProfileBasis,
  { reading, step, isSequential }: NullSpread,
  p: number,
  y: number,
): { readonly strength: Strength; readonly value: number } {
  const { sample, law, fit, ends, unit } = basis;
  const z = law.quantile(p);
  const reach = Math.max(unit, Math.abs(ends.highest - y), Math.abs(ends.lowest - y));
  const start = fit.kind === 'exists' ? Math.min(1 / fit.scale, 20 / reach) : 4 / reach;
  const { value, steepness } = maximiseThrough(basis, y, z, start);
  let n = 0;
  for (let i = 0; i < sample.size; i++) n += sample.count[i]!;
  // With hardly more observations than are lost the factor would run off.
  const factor = n / Math.max(n - LOST[reading], 0.4 * n);
  const own = fit.kind === 'exists' ? factor * fit.scale : 0;
  const { least, most } = isSequential ? SEQUENTIAL : FIXED;
  const highest = isSequential ? Math.max(most * step, own) : most * step;
  const scale = Math.min(Math.max(factor / steepness, least * step), highest);
  return { strength: { location: y - z * scale, scale }, value };
}
