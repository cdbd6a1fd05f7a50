import type { Input } from './analysis.ts';

/** How one instrument stands on a day. */
export interface InstrumentStatus {
  readonly instrument: string;
  readonly quantity: string | null;
  readonly checks: number;
  readonly lastGood: string | null;
  readonly lastBad: string | null;
  readonly due: string | null;
  readonly certificate: string | null;
  /** `due` within the coming days, `overdue`, `failed` at its last check; `not-dated` where no due date is set. */
  readonly standing: 'in-date' | 'due' | 'overdue' | 'failed' | 'not-dated';
}

/** A stretch of time in which what an instrument read is in doubt. */
export interface DoubtfulPeriod {
  readonly instrument: string;
  /** From the last good check before, to the first good one after; null where there is none. */
  readonly from: string | null;
  readonly bad: string;
  readonly to: string | null;
  readonly settled: string | null;
}

/** A stored result that used an instrument in a doubtful period or past its due date. */
export interface DoubtfulResult {
  readonly path: string;
  readonly run: string | null;
  readonly instrument: string | null;
  readonly from: string | null;
  readonly to: string | null;
  readonly standing: 'touched' | 'overdue' | 'clear' | 'unknown';
  readonly why: string;
}

/** `tirelab instruments`: the calibration register as of a day. */
export interface InstrumentsResult {
  readonly asOf: string;
  readonly inputs: readonly Input[];
  readonly instruments: readonly InstrumentStatus[];
  readonly doubtful: readonly DoubtfulPeriod[];
  readonly results: readonly DoubtfulResult[];
  readonly standing: 'in-order' | 'attention';
}
