export type Verdict = 'pass' | 'fail' | 'inconclusive' | 'not-tested' | 'invalid' | 'waived' | 'external';

/** One limit of a specification, and how the evidence stands to it. */
export interface JudgedCriterion {
  readonly id: string;
  /** Which of several samples was judged; not set for the only one. */
  readonly sample?: string;
  readonly construction?: string | null;
  readonly quantity: string;
  readonly probability?: number;
  /** For reliability: distance in km. */
  readonly at?: number;
  readonly limit: {
    readonly atLeast?: number;
    readonly atMost?: number;
    readonly within?: { readonly lower: number; readonly upper: number };
    readonly unit: string;
  };
  readonly rule: string;
  readonly confidence: number;
  readonly estimate: number | null;
  readonly standardError: number | null;
  /** Tyres behind the evidence. */
  readonly specimens: number;
  /** One-sided bounds at the criterion's confidence; null ends are unbounded or not available. */
  readonly bounds: { readonly lower: number | null; readonly upper: number | null };
  readonly basis: { readonly method: string | null; readonly interval: string | null };
  readonly verdict: Verdict;
  readonly why: string;
  /** Whether the overall verdict counts it: not where its protocol is another than the run's. */
  readonly counted: boolean;
  /** For an inconclusive `lower-bound`: about how many more specimens would decide; null where none can be named. */
  readonly more?: { readonly specimens: number | null; readonly why: string };
  /** For criteria that look at each specimen: how many were measured, the ends of their values, who is beyond. */
  readonly measured?: {
    readonly specimens: number;
    readonly missing: number;
    readonly smallest: number;
    readonly largest: number;
    readonly beyond: readonly string[];
  };
}
