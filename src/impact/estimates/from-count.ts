import type { Estimate } from '../../result/estimate.ts';
import type { LawName } from '../../statistics/law.ts';
import { normalCritical } from '../../statistics/likelihood/critical.ts';
import { waldInterval, waldIntervalOnLog } from '../../statistics/likelihood/wald.ts';
import { type CountEstimate, countUpAndDown } from '../../statistics/up-and-down/count.ts';
import type { Grid, LevelDrop } from '../../statistics/up-and-down/grid.ts';

/** The drops of an up-and-down test as the count formula wants them, or why it does not apply. */
export type CountableDrops =
  | {
      readonly applies: true;
      readonly drops: readonly LevelDrop[];
      /** Levels in J, or in ln J where the law is lognormal. */
      readonly grid: Grid;
    }
  | { readonly applies: false; readonly why: string };

/** What every entry of a result says of its evidence. */
export interface Basis {
  readonly confidence: number;
  readonly specimens: number;
  readonly drops: number;
}

const METHOD = 'up-and-down-count';

/**
 * Median and spread by the count formula (Dixon and Mood 1948), with Wald intervals; two entries with a reason
 * instead of numbers where the conditions of the formula do not hold.
 */
export function estimatesFromCount(countable: CountableDrops, law: LawName, basis: Basis): Estimate[] {
  if (!countable.applies) return refused(law, basis, `the count formula does not apply: ${countable.why}`);
  const count = countUpAndDown(countable.drops, countable.grid);
  if (count === null) return refused(law, basis, 'all drops had one outcome, so there is none to count');
  return law === 'lognormal' ? onLogScale(count, basis) : onEnergyScale(count, basis);
}

function onEnergyScale(count: CountEstimate, basis: Basis): Estimate[] {
  const z = normalCritical(basis.confidence, 2);
  const median = { value: count.mean, standardError: count.meanError };
  return [
    {
      ...entry('medianFailureEnergy', 'normal', 'J', basis),
      ...median,
      interval: wald(waldInterval(median, z), basis),
    },
    spreadEntry(count, 'normal', 'J', basis),
  ];
}

function onLogScale(count: CountEstimate, basis: Basis): Estimate[] {
  const z = normalCritical(basis.confidence, 2);
  const value = Math.exp(count.mean);
  const median = { value, standardError: value * count.meanError };
  return [
    {
      ...entry('medianFailureEnergy', 'lognormal', 'J', basis),
      ...median,
      interval: wald(waldIntervalOnLog(median, z), basis),
    },
    spreadEntry(count, 'lognormal', '1', basis),
  ];
}

function spreadEntry(count: CountEstimate, law: LawName, unit: string, basis: Basis): Estimate {
  const head = entry('energySpread', law, unit, basis);
  if (count.spreadError === null) {
    const why =
      'the count cannot tell a spread as small as this beside the step (M at most 0.3): 0.53 of the step is put in its place, as fatigue standards do';
    return { ...head, value: count.spread, standardError: null, interval: null, why };
  }
  const spread = { value: count.spread, standardError: count.spreadError };
  const limits = waldInterval(spread, normalCritical(basis.confidence, 2));
  // Wald's limits may leave the range of the quantity; a spread does not.
  return { ...head, ...spread, interval: wald({ ...limits, lower: Math.max(0, limits.lower ?? 0) }, basis) };
}

function refused(law: LawName, basis: Basis, why: string): Estimate[] {
  return [
    { ...entry('medianFailureEnergy', law, 'J', basis), why },
    { ...entry('energySpread', law, law === 'normal' || law === 'logistic' ? 'J' : '1', basis), why },
  ];
}

function wald(
  limits: { readonly lower: number | null; readonly upper: number | null },
  { confidence }: Basis,
) {
  return { level: confidence, sides: 2, lower: limits.lower, upper: limits.upper, method: 'wald' } as const;
}

function entry(quantity: string, distribution: LawName, unit: string, { specimens, drops }: Basis): Estimate {
  return {
    quantity,
    method: METHOD,
    distribution,
    unit,
    value: null,
    standardError: null,
    interval: null,
    specimens,
    drops,
    why: null,
  };
}
