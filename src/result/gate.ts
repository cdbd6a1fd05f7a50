import type { Problem } from '../problem/problem.ts';
import type { JudgedCriterion, Verdict } from './criterion.ts';

/** One criterion of a construction, by all runs that speak to it. */
export interface GatedCriterion {
  readonly id: string;
  readonly verdict: Verdict;
  readonly why: string;
  /** What each run said of it; empty where none did. */
  readonly evidence: readonly {
    readonly run: string;
    readonly path: string;
    readonly judged: JudgedCriterion;
  }[];
}

/** A construction held against one specification that applies to it. */
export interface GatedConstruction {
  readonly construction: { readonly id: string; readonly revision: string; readonly path: string };
  readonly specification: { readonly id: string; readonly version: string; readonly path: string };
  readonly criteria: readonly GatedCriterion[];
  readonly verdict: Verdict;
}

/** What `gate` finds. */
export interface GateResult {
  readonly judged: readonly GatedConstruction[];
  /** Runs that could not be read, with why: they stop neither the others nor the gate. */
  readonly unreadable: readonly { readonly path: string; readonly problems: readonly Problem[] }[];
  /** Constructions to which no specification applies: said, not judged. */
  readonly unspecified: readonly { readonly id: string; readonly revision: string; readonly path: string }[];
  readonly verdict: Verdict;
}
