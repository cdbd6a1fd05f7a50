import { mean, variance } from '../summary/moments.ts';
import { chartConstants } from './constants.ts';
import { type ChartLimits, checkBase } from './limits.ts';

/** Limits for the means of subgroups and for their spread. */
export interface SubgroupLimits {
  readonly mean: ChartLimits;
  readonly spread: ChartLimits;
  /** Standard deviation within subgroups. */
  readonly sigma: number;
}

/** The range of a subgroup. */
export function rangeOf(group: readonly number[]): number {
  return Math.max(...group) - Math.min(...group);
}

/** The standard deviation of a subgroup. */
export function standardDeviationOf(group: readonly number[]): number {
  return Math.sqrt(variance(group));
}

/**
 * X̄–R limits from a base period of subgroups: x̿ ± A2·R̄; D3·R̄ and D4·R̄.
 *
 * @throws RangeError for fewer than 10 subgroups, subgroups of unequal size or of one, or no spread
 */
export function meanRangeLimits(base: readonly (readonly number[])[]): SubgroupLimits {
  const { size, centre } = checkGroups(base);
  const { A2, D3, D4, d2 } = chartConstants(size);
  const range = spreadOf(base.map(rangeOf));
  return {
    mean: { centre, lower: centre - A2 * range, upper: centre + A2 * range },
    spread: { centre: range, lower: D3 * range, upper: D4 * range },
    sigma: range / d2,
  };
}

/** X̄–S limits from a base period of subgroups: x̿ ± A3·s̄; B3·s̄ and B4·s̄. Throws as meanRangeLimits does. */
export function meanSpreadLimits(base: readonly (readonly number[])[]): SubgroupLimits {
  const { size, centre } = checkGroups(base);
  const { A3, B3, B4, c4 } = chartConstants(size);
  const spread = spreadOf(base.map(standardDeviationOf));
  return {
    mean: { centre, lower: centre - A3 * spread, upper: centre + A3 * spread },
    spread: { centre: spread, lower: B3 * spread, upper: B4 * spread },
    sigma: spread / c4,
  };
}

function checkGroups(base: readonly (readonly number[])[]): { size: number; centre: number } {
  checkBase(base.length, base.flat());
  const size = base[0]!.length;
  const other = base.findIndex((group) => group.length !== size);
  if (other !== -1)
    throw new RangeError(`subgroup ${other + 1} has ${base[other]!.length} values, the first one ${size}`);
  return { size, centre: mean(base.flat()) };
}

function spreadOf(spreads: readonly number[]): number {
  const centre = mean(spreads);
  if (!(centre > 0))
    throw new RangeError('the subgroups of the base period have no spread; no limits follow');
  return centre;
}
