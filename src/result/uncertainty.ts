/** A line of the budget of one drop. */
export interface UncertaintyLine {
  readonly of: string;
  readonly source: string;
  /** `common` to all drops, or drawn anew with each `drop`. */
  readonly scope: 'common' | 'drop';
  readonly unit: string;
  readonly standardUncertainty: number;
  /** Null is infinite. */
  readonly degrees: number | null;
  /** J for a unit of the input. */
  readonly sensitivity: number;
  /** J. */
  readonly contribution: number;
}

/** A standard uncertainty in J with its effective degrees of freedom; null is infinite. */
export interface Uncertain {
  readonly standardUncertainty: number;
  readonly degrees: number | null;
}

/** The law of propagation held against drawing (JCGM 101). */
export interface DrawnCheck {
  /** J at which it was made. */
  readonly energy: number;
  readonly trials: number;
  readonly seed: number;
  readonly level: number;
  /** J: ends by propagation and by drawing. */
  readonly propagated: { readonly lower: number; readonly upper: number };
  readonly drawn: { readonly lower: number; readonly upper: number };
  /** J by which the ends may differ. */
  readonly tolerance: number;
  readonly agrees: boolean;
}

/** What the rig adds to an estimate in J. */
export interface CarriedUncertainty {
  readonly quantity: string;
  readonly probability?: number;
  readonly sample?: string;
  readonly unit: 'J';
  readonly value: number;
  /** Of the drops: shrinks with their number. */
  readonly standardError: number;
  /** Of the rig, common to all drops: does not. */
  readonly common: number;
  readonly combined: number;
  /** Effective, of the combined one; null is infinite. */
  readonly degrees: number | null;
  readonly level: number;
  readonly factor: number;
  readonly expanded: number;
  /**
   * That of the drops, each half widened in quadrature by the expanded common part: it stays as wide as the likelihood has it where the
   * normal law of the standard error would not. Null ends are unbounded, null where the drops give none.
   */
  readonly interval: {
    readonly level: number;
    readonly lower: number | null;
    readonly upper: number | null;
  } | null;
}

/** The budget of a rig, and what it does to the estimates. */
export interface UncertaintyResult {
  /** The drop that the budget is drawn up for. */
  readonly at: {
    readonly energy: number;
    /** mm, kg, m/s², bar. */
    readonly height: number;
    readonly mass: number;
    readonly gravity: number;
    readonly pressure: number | null;
  };
  readonly lines: readonly UncertaintyLine[];
  readonly common: Uncertain;
  readonly drop: Uncertain;
  readonly whole: Uncertain;
  readonly check: DrawnCheck;
  readonly estimates: readonly CarriedUncertainty[];
  readonly notes: readonly string[];
}
