import type { Problem } from '../problem/problem.ts';
import type { JudgedCriterion, Verdict } from './criterion.ts';

/** What one run said of a criterion, and where that lies. */
export interface GateEvidence {
  readonly run: string;
  /** Of the run's file; of the stored result where the run itself is not under the paths. */
  readonly path: string;
  /** The stored result that it was taken from; null where the logs were analysed. */
  readonly result: string | null;
  readonly judged: JudgedCriterion;
}

/** A waiver that counts, and what the verdict would be without it. */
export interface AppliedWaiver {
  readonly id: string;
  readonly path: string;
  readonly owner: string;
  readonly role: string;
  readonly reason: string;
  readonly expires: string;
  readonly batches: string | null;
  readonly market: string | null;
  readonly insteadOf: Verdict;
}

/** One criterion of a construction, by all runs that speak to it. */
export interface GatedCriterion {
  readonly id: string;
  readonly verdict: Verdict;
  readonly why: string;
  readonly safety: boolean;
  readonly waiver: AppliedWaiver | null;
  /** Waivers that do not count, runs set aside: sentences. */
  readonly notes: readonly string[];
  /** The verdict by the limit as it stands, where another one was tried out; not set otherwise. */
  readonly before?: Verdict;
  /** What each run said of it; empty where none did. */
  readonly evidence: readonly GateEvidence[];
}

/** A construction held against one specification that applies to it. */
export interface GatedConstruction {
  readonly construction: { readonly id: string; readonly revision: string; readonly path: string };
  readonly specification: { readonly id: string; readonly version: string; readonly path: string };
  readonly criteria: readonly GatedCriterion[];
  readonly verdict: Verdict;
}

/** A stored result under the paths. */
export interface FoundResult {
  readonly path: string;
  readonly run: string | null;
  /** `current` still is what its inputs give; what is `stale` was made from something else. */
  readonly state: 'current' | 'stale';
  /** What it was made from that is no longer so; null for a current one. */
  readonly why: string | null;
  /** Inputs that are not here, so that nobody could compare them. */
  readonly notCompared: number;
}

/** A construction that is not judged. */
export interface NamedConstruction {
  readonly id: string;
  readonly revision: string;
  readonly path: string;
}

/** What `gate` finds. */
export interface GateResult {
  readonly judged: readonly GatedConstruction[];
  /** Runs and results that could not be read, with why: they stop neither the others nor the gate. */
  readonly unreadable: readonly { readonly path: string; readonly problems: readonly Problem[] }[];
  /** Constructions to which no specification applies: said, not judged. */
  readonly unspecified: readonly NamedConstruction[];
  /** Constructions that were withdrawn: said, not judged. */
  readonly withdrawn: readonly NamedConstruction[];
  readonly results: readonly FoundResult[];
  /** What a reviewer should look at in the documents, and what stops nothing. */
  readonly remarks: readonly Problem[];
  /** The day by which waivers were looked at; null where there was none to look at. */
  readonly asOf: string | null;
  /** Limits tried out; empty as a rule. */
  readonly whatIf: readonly string[];
  /** Since which commit changes were looked for, and how many pairs of construction and specification had none. */
  readonly since: { readonly reference: string; readonly unchanged: number } | null;
  readonly verdict: Verdict;
}
