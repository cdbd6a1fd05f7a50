import type { ProfileBasis } from '../statistics/likelihood/constrained.ts';
import type { Trials } from './carry-out.ts';
import type { LevelTable } from './level-table.ts';
import type { TrueStrength } from './strength.ts';

/** A simulated test as estimators see it; what it holds is refilled by the next one. */
export interface SimulatedTest {
  readonly trials: Trials;
  readonly levels: LevelTable;
  readonly basis: ProfileBasis;
  readonly truth: TrueStrength;
}

/** An interval or one-sided bound that an estimator gives. */
export interface IntervalKind {
  readonly level: number;
  readonly sides: 1 | 2;
  /** `profile-likelihood`, `wald`, `tolerance-factor`. */
  readonly method: string;
}

/** How the intervals of many tests stood to the truth. */
export interface IntervalTally {
  /** Tests whose interval holds the true value; an open end holds everything beyond. */
  held: number;
  /** Tests whose interval is open on a side that it should close. */
  unbounded: number;
  /** Tests that have no interval at all. */
  absent: number;
}

/** One number that a test is evaluated to, beside what it should be. */
export interface Estimator {
  readonly quantity: string;
  readonly method: string;
  readonly probability?: number;
  readonly unit: string;
  readonly intervals: readonly IntervalKind[];
  /**
   * Estimate less truth; NaN where the test has no estimate, or the law that is fitted has no such number to compare.
   *
   * @param tallies one for each of the intervals, to be counted on
   */
  errorOf(test: SimulatedTest, tallies: readonly IntervalTally[]): number;
}
