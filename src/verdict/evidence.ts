/** What the tests say about one criterion: all numbers in the unit of its limit. */
export interface Evidence {
  /** `invalid` where the protocol was broken so that no verdict may be given; `none` where nothing was tested. */
  readonly status: 'valid' | 'invalid' | 'none';
  readonly estimate: number | null;
  readonly standardError: number | null;
  /** Whether what the rig adds to every drop alike lies in the standard error too. */
  readonly includesRig?: boolean;
  /** One-sided bounds, each at the criterion's confidence; null is unbounded or not available. */
  readonly lower: number | null;
  readonly upper: number | null;
  /** Of the estimate, and of the bounds: `censored-likelihood`, `profile-likelihood`. */
  readonly method: string | null;
  readonly interval: string | null;
  readonly specimens: number;
  /** Why something is missing, or what the status rests on. */
  readonly why: string | null;
}

/** A value measured on one tyre, in the unit of the limit; null where it was not measured. */
export interface Measurement {
  readonly specimen: string;
  readonly value: number | null;
}

/** Evidence of nothing, for criteria whose test was not made or may not be judged. */
export function withoutEvidence(status: 'invalid' | 'none', why: string | null, specimens = 0): Evidence {
  return {
    status,
    estimate: null,
    standardError: null,
    lower: null,
    upper: null,
    method: null,
    interval: null,
    specimens,
    why,
  };
}
