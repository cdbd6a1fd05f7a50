import type { LawName } from '../statistics/law.ts';

/** An interval or one-sided bound; null ends are unbounded. */
export interface Interval {
  readonly level: number;
  readonly sides: 1 | 2;
  readonly lower: number | null;
  readonly upper: number | null;
  /** `profile-likelihood`, `wald`, `calibrated`, …. */
  readonly method: string;
  /** Of the simulated tests behind it, where there are any. */
  readonly seed?: number;
}

/**
 * What the limits of a drop test's likelihood rest on: tests simulated as the protocol has them, with the profile
 * likelihood beside, or the latter alone, which is faster and holds less often than it says in small samples.
 */
export type IntervalKind = 'calibrated' | 'profile-likelihood';

/** A quantity with its method, its interval, and the numbers of specimens and drops behind it. */
export interface Estimate {
  readonly quantity: string;
  /** Which of several samples it is of; not set for the only one. */
  readonly sample?: string;
  readonly construction?: string | null;
  readonly method: string;
  readonly distribution?: LawName;
  /** For quantiles: the share failed. */
  readonly probability?: number;
  /** Set where the entry stands beside the headline under another choice, such as `with-unexplained-exclusions`. */
  readonly variant?: string;
  readonly unit: string;
  readonly value: number | null;
  readonly standardError: number | null;
  readonly interval: Interval | null;
  readonly specimens: number;
  readonly drops: number;
  /** Why value or interval is null, why the method does not apply, or what binds the number to its protocol. */
  readonly why: string | null;
}
