export type Severity = 'note' | 'minor' | 'invalidating';
export type Scope = 'drop' | 'interval' | 'specimen' | 'run' | 'comparison';

/** A departure from the protocol, at its place in the log. */
export interface Deviation {
  /** `DROP-04`, `DRUM-17`: an entry of the catalogue. */
  readonly code: string;
  readonly severity: Severity;
  readonly scope: Scope;
  /** What was found, what the protocol asks, and what it does to the estimate. */
  readonly message: string;
  readonly file: string | null;
  readonly line: number | null;
  readonly specimen: string | null;
  /** The rig's number of the drop, or its place in the log (one-based) where the rig gives none. */
  readonly drop: number | null;
}

/** Deviations of one code beyond the first 20 stand together in one entry (CONTRACT: not errors). */
export interface ListedDeviation extends Deviation {
  readonly count: number;
  readonly firstLine?: number;
  readonly lastLine?: number;
}

/** `conforming` has notes at most; one drop left out makes it `deviating`. */
export type ConformanceStatus = 'conforming' | 'deviating' | 'invalid';
