/** Effects of conditions on the strength, each with its likelihood-ratio test. */
export interface RegressionResult {
  /** The scale that effects are told on: J, or of ln E (unit `1`). */
  readonly unit: string;
  readonly effects: readonly {
    /** As in the design: `construction B`, `pressure`. */
    readonly name: string;
    readonly term: string;
    readonly value: number;
    readonly standardError: number;
    /** Per unit of the covariate: bar, °C, kg; null for a factor, whose effects are differences from its reference. */
    readonly per: string | null;
  }[];
  readonly tests: readonly {
    readonly term: string;
    /** Twice the difference of the log-likelihoods, and the effects tested. */
    readonly statistic: number | null;
    readonly degrees: number | null;
    readonly p: number | null;
    readonly why: string | null;
  }[];
  /** Why there is no regression; null where there is one. */
  readonly why: string | null;
  readonly notes: readonly string[];
}
