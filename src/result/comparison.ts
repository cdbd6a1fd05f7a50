import type { Problem } from '../problem/problem.ts';
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
  /** Of the run; of the first one where several are pooled. */
  readonly path: string;
  /** Runs that were put together: their files; one as a rule. */
  readonly paths: readonly string[];
  readonly construction: { readonly id: string; readonly revision: string };
  readonly role: 'candidate' | 'reference';
  readonly specimens: number;
  /** 0 of drum tests. */
  readonly drops: number;
  readonly failures: number;
  /** g, mean of its tyres or as the construction states it; null where neither tells. */
  readonly mass: number | null;
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
  /**
   * What the limits rest on: `calibrated` those of each side, joined; `profile-likelihood` the ratio or difference
   * itself; `specimen-effect` single hits on fresh tyres, joined.
   */
  readonly interval: 'calibrated' | 'profile-likelihood' | 'specimen-effect';
  /** J of drop tests, km of drum tests; of first and second. */
  readonly values: readonly [number | null, number | null];
  readonly ratio: WithInterval;
  /** J or km, second less first. */
  readonly difference: WithInterval;
  /** Likelihood-ratio test that both are equal, by the chi-squared law with one degree of freedom; null where the limits are joined. */
  readonly p: number | null;
}

/** Whether one construction loses more than a margin against another, by a one-sided bound of the ratio. */
export interface NonInferiority {
  /** Share that may be lost. */
  readonly margin: number;
  readonly ratio: number | null;
  /** One-sided, each at the confidence of the comparison. */
  readonly lower: number | null;
  readonly upper: number | null;
  readonly verdict: 'not-inferior' | 'inferior' | 'undecided';
}

/** A test of equal survival that assumes no law. */
export interface LogRankResult {
  readonly statistic: number | null;
  readonly p: number | null;
  readonly why: string | null;
}

/** A ratio to the reference of the same day, J/J or km/km. */
export interface RelativeToReference {
  /** Places among the samples. */
  readonly sample: number;
  readonly reference: number;
  readonly ratio: WithInterval;
  readonly nonInferiority: NonInferiority | null;
}

/** Two samples as ratios to the references of their own days: what a day, a rig or its state does to both cancels. */
export interface RatioOfRatios extends WithInterval {
  readonly first: number;
  readonly second: number;
}

/** How something that should be the same, or mixed, stands to the constructions. */
export interface Aliasing {
  readonly factor: string;
  /**
   * - `constant`: the same for all;
   * - `crossed`: every construction met every value;
   * - `partly`: some values are shared, some not;
   * - `aliased`: no value is shared, so that nothing in the data can tell it from the construction;
   * - `unknown`: not recorded for all.
   */
  readonly state: 'constant' | 'crossed' | 'partly' | 'aliased' | 'unknown';
  readonly why: string;
}

/** The constructions against the first, allowing for conditions of each observation, on one likelihood. */
export interface AdjustedComparison {
  readonly covariates: readonly string[];
  /** Of the differences: J, or 1 where they are of the logarithm. */
  readonly unit: string;
  readonly differences: readonly {
    readonly label: string;
    /** Second less first; of the logarithm where the law is of it. */
    readonly value: number;
    readonly standardError: number;
    readonly lower: number;
    readonly upper: number;
    /** Where the law is of the logarithm. */
    readonly ratio: number | null;
  }[];
  /** Likelihood-ratio test of all constructions being equal, the covariates allowed for. */
  readonly test: { readonly statistic: number; readonly degrees: number; readonly p: number } | null;
  readonly why: string | null;
}

/** Energy or life against the mass of the tyre. */
export interface TradeOff {
  readonly sample: number;
  /** g. */
  readonly mass: number;
  readonly median: number;
  /** Places of samples that are no heavier and no weaker, and better in one; empty on the frontier. */
  readonly dominatedBy: readonly number[];
  /** Whether one of them is told apart from it. */
  readonly isToldApart: boolean;
}

/** A verdict of a run's own specification that turns when one specimen is left out. */
export interface VerdictInfluence {
  readonly sample: number;
  readonly specimen: string;
  readonly criterion: string;
  readonly whole: string;
  readonly without: string;
}

export interface ComparedPair {
  /** Places among the samples. */
  readonly first: number;
  readonly second: number;
  readonly differences: readonly PercentileDifference[];
  /** Likelihood-ratio test of one spread against two; null where a fit does not exist. */
  readonly equalSpreads: { readonly statistic: number; readonly p: number } | null;
  /** Likelihood-ratio test of equal medians under a common spread; null where a fit does not exist. */
  readonly p: number | null;
  /** Of drum tests. */
  readonly logRank: LogRankResult | null;
  /** Second against first, where a margin was given. */
  readonly nonInferiority: NonInferiority | null;
  /** That p by Holm over all pairs. */
  readonly holm: number | null;
  /** Whether Holm's p is at most 1 − confidence and a calibrated interval, where there is one, leaves out equality. */
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
  /** What is compared: failure energies in J, lives in km. */
  readonly kind: 'impact' | 'endurance';
  readonly unit: 'J' | 'km';
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
  /** Runs whose files could not be read, and what is wrong with them. */
  readonly unread: readonly { readonly path: string; readonly problems: readonly Problem[] }[];
  readonly aliasing: readonly Aliasing[];
  /** Null where no covariates were asked for. */
  readonly adjusted: AdjustedComparison | null;
  /** Empty where no reference was given. */
  readonly relative: readonly RelativeToReference[];
  readonly ratiosOfRatios: readonly RatioOfRatios[];
  /** Lightest first; empty where fewer than two masses are known. */
  readonly tradeOff: readonly TradeOff[];
  readonly verdictInfluence: readonly VerdictInfluence[];
}
