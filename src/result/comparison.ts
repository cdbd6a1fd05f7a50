import type { Input } from './analysis.ts';

/** How a factor stands over the samples compared. Missing is never equal. */
export type FactorState = 'equal' | 'declared' | 'consequence' | 'differs' | 'unknown';

export interface ComparedFactor {
  /** `construction: casing.tpi`, `mounting: rim`, `conditions: day` without its group. */
  readonly name: string;
  readonly group: 'construction' | 'mounting' | 'conditions';
  readonly state: FactorState;
  /** As written, one a sample; null where nothing is recorded. */
  readonly values: readonly (string | null)[];
  /** Why it counts as it does, where the values do not say; null otherwise. */
  readonly note: string | null;
  /** The reason for which a difference was put aside; null where it was not. */
  readonly despite: string | null;
}

export interface ComparedSample {
  readonly label: string;
  readonly run: string | null;
  readonly path: string;
  readonly construction: { readonly id: string; readonly revision: string };
  readonly specimens: number;
  readonly drops: number;
  readonly failures: number;
}

/** A value with its likelihood interval; null is unbounded or not to be had. */
export interface WithInterval {
  readonly value: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  /** Why there is no value; null where there is one. */
  readonly why: string | null;
}

/** One share failed: second against first, by one model of the spreads. */
export interface PercentileDifference {
  readonly probability: number;
  readonly spreads: 'common' | 'separate';
  /** J, of first and second. */
  readonly energies: readonly [number | null, number | null];
  readonly ratio: WithInterval;
  /** J, second less first. */
  readonly difference: WithInterval;
  /** Likelihood-ratio test that both are equal, by the chi-squared law with one degree of freedom. */
  readonly p: number | null;
}

export interface ComparedPair {
  /** Places among the samples. */
  readonly first: number;
  readonly second: number;
  readonly differences: readonly PercentileDifference[];
  /** Likelihood-ratio test of one spread against two; null where a fit does not exist. */
  readonly equalSpreads: { readonly statistic: number; readonly p: number } | null;
  /** p of equal medians under a common spread, by Holm over all pairs. */
  readonly holm: number | null;
  readonly toldApart: boolean | null;
  /** A ratio of medians above one that would be found four times in five; its inverse as well. */
  readonly smallestRatio: number | null;
}

/** A specimen without which two samples change places by their medians, or a pair is told apart or no longer is. */
export interface Influence {
  readonly sample: number;
  readonly specimen: string;
  readonly effect: string;
}

export interface ComparisonResult {
  readonly inputs: readonly Input[];
  readonly distribution: string;
  readonly confidence: number;
  readonly samples: readonly ComparedSample[];
  readonly factors: readonly ComparedFactor[];
  /** Why nothing may be compared; empty where it may. */
  readonly refused: readonly string[];
  readonly notes: readonly string[];
  /** Empty where refused. */
  readonly pairs: readonly ComparedPair[];
  /** Places of samples, weakest first; null where some median has no value. */
  readonly ranking: readonly number[] | null;
  /** Sets of samples that are not told apart. */
  readonly groups: readonly (readonly number[])[];
  readonly influence: readonly Influence[];
}
