import type { LawName } from '../statistics/law.ts';
import type { Input } from './analysis.ts';
import type { Verdict } from './criterion.ts';

/** A number found by simulation, with one standard error of the simulation itself (Monte Carlo error). */
export interface Simulated {
  readonly value: number;
  readonly error: number;
}

/** How an interval kept its promise: shares of all tests. */
export interface SimulatedInterval {
  readonly level: number;
  readonly sides: 1 | 2;
  readonly method: string;
  /** Tests whose interval holds the true value; an open end holds all beyond it, no interval holds nothing. */
  readonly coverage: Simulated;
  /** Tests whose interval is open on a side that it should close, and those without any interval. */
  readonly unbounded: number;
  readonly absent: number;
}

/** How an estimator did beside the truth. */
export interface SimulatedEstimate {
  readonly quantity: string;
  readonly probability?: number;
  readonly method: string;
  readonly unit: string;
  /** What it should be, for the median as assumed. */
  readonly truth: number | null;
  /** Share of tests that gave this estimate. */
  readonly exists: number;
  /** Mean, standard deviation and middle of estimate less truth, over the tests that gave one; null where none did. */
  readonly bias: Simulated | null;
  readonly standardDeviation: Simulated | null;
  readonly medianError: number | null;
  /** The middle 95 % of the errors. */
  readonly middle: { readonly lower: number; readonly upper: number } | null;
  readonly intervals: readonly SimulatedInterval[];
}

/** A count over tests. */
export interface SimulatedCount {
  readonly mean: Simulated;
  /** 95 % of the tests need at most so many. */
  readonly mostly: number;
  readonly most: number;
}

/** All tests at one true median. */
export interface SimulatedPoint {
  /** J. */
  readonly median: number;
  readonly drops: SimulatedCount;
  readonly specimens: SimulatedCount;
  /** Share of tests by what their likelihood has: `exists`, or the kind of reason for no single best fit. */
  readonly existence: Readonly<Record<string, number>>;
  readonly estimates: readonly SimulatedEstimate[];
  /** Chance of each verdict; null without a specification. */
  readonly verdicts: {
    readonly overall: Readonly<Partial<Record<Verdict, Simulated>>>;
    readonly criteria: readonly {
      readonly id: string;
      readonly verdicts: Readonly<Partial<Record<Verdict, Simulated>>>;
    }[];
  } | null;
}

/** What was assumed of the tyres. */
export interface AssumedResult {
  readonly law: LawName;
  readonly spread: number;
  /** J for normal and logistic, `1` (of ln E) for lognormal and Weibull. */
  readonly spreadUnit: string;
  readonly between: number;
  readonly damage: number;
  readonly anyOffset: boolean;
}

/** What a protocol would find on tyres of known strength (`tirelab.simulation/1`). */
export interface SimulationResult {
  readonly kind: 'simulation';
  readonly protocol: {
    readonly id: string;
    readonly version: string;
    readonly method: string;
    readonly title: string | null;
    readonly distribution: LawName;
  };
  readonly specification: {
    readonly id: string;
    readonly version: string;
    /** J: the limit on the median that this protocol is to show; null where there is none. */
    readonly medianLimit: number | null;
  } | null;
  readonly inputs: readonly Input[];
  readonly energy: { readonly mass: number | null; readonly gravity: number; readonly gravityFrom: string };
  readonly assumed: AssumedResult;
  readonly tests: number;
  readonly seed: number;
  /** What was taken for want of a statement, and what is worth knowing: sentences. */
  readonly defaults: readonly string[];
  readonly notes: readonly string[];
  readonly points: readonly SimulatedPoint[];
}
