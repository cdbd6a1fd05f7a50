import type { Scope, Severity } from '../conformance/deviation.ts';

/** What a code of the catalogue means. */
export interface Explanation {
  readonly code: string;
  readonly title: string;
  /** As a rule; a check or the protocol may weigh it otherwise. */
  readonly severity: Severity;
  readonly scope: Scope;
  /** What it weighs where the protocol names it under `heavier`; null where it has one weight. */
  readonly heavier: { readonly severity: Severity; readonly scope: Scope } | null;
  readonly effect: string;
  /** Whether it may be the reason for leaving a drop out. */
  readonly excuses: boolean;
  /** Where it shows; empty where the program does not say. */
  readonly seen: readonly string[];
  readonly from: string | null;
  readonly unseen: string | null;
}
