import type { Scope, Severity } from '../deviation.ts';

/** What is known of a departure from a protocol before any log is read. */
export interface CatalogueEntry {
  readonly code: string;
  /** A few words for a list. */
  readonly title: string;
  /** What it weighs unless the check that raises it, or the protocol, says otherwise. */
  readonly severity: Severity;
  readonly scope: Scope;
  /** What it does to the estimate: the last part of every message. */
  readonly effect: string;
  /**
   * Whether a technician may give it as the reason for leaving a drop out. Codes that speak of the outcome, of a
   * whole series or of the exclusion itself are no such reason: leaving drops out for their outcome biases.
   */
  readonly excuses: boolean;
}
