import type { Input } from './analysis.ts';
import type { AssumedResult, Simulated } from './simulation.ts';

/** One level of a plan. */
export interface PlannedLevel {
  /** mm; for a protocol that varies the mass its one height. */
  readonly height: number;
  /** kg; null where nobody states it. */
  readonly mass: number | null;
  readonly energy: number | null;
  /** m/s of a free fall. */
  readonly impactSpeed: number;
  readonly isStart: boolean;
}

/** A row of the run sheet: the order in which specimens come under the mass. */
export interface SheetRow {
  readonly order: number;
  /** Within a block every construction has its turn. */
  readonly block: number;
  readonly specimen: string;
  readonly construction: string | null;
  /** Degrees from the valve. */
  readonly site: number;
  /** mm; known beforehand for the first drop, and for fixed levels. */
  readonly plannedHeight: number | null;
}

/** What a test of one size costs; hours by the minutes stated. */
export interface Effort {
  readonly drops: number;
  readonly specimens: number;
  readonly hours: number;
}

/** What a size promises. */
export interface PlannedPrecision {
  readonly size: number;
  /** J: so near to the true median 95 % (or the protocol's confidence) of tests come. */
  readonly within: Simulated;
  readonly effort: Effort;
}

export interface PlannedGain {
  /** Of each of the two groups. */
  readonly size: number;
  readonly gain: number;
  readonly power: Simulated;
  /** Of both groups together. */
  readonly effort: Effort;
}

/** An answer to a question, or why there is none. */
export type Answer<Found> =
  | { readonly found: Found; readonly why: null }
  | { readonly found: null; readonly why: string };

/** How a test is laid out beforehand (`tirelab.plan/1`). */
export interface PlanResult {
  readonly kind: 'plan';
  readonly protocol: {
    readonly id: string;
    readonly version: string;
    readonly method: string;
    readonly title: string | null;
  };
  readonly inputs: readonly Input[];
  readonly energy: { readonly mass: number | null; readonly gravity: number; readonly gravityFrom: string };
  readonly levels: readonly PlannedLevel[];
  /** What a size is counted in: drops, specimens, or drops per level. */
  readonly sizeUnit: string;
  readonly confidence: number;
  /** What was assumed of the tyres; null where nothing was simulated. */
  readonly assumed: (AssumedResult & { readonly median: number; readonly from: string }) | null;
  readonly tests: number;
  readonly seed: number;
  readonly minutes: { readonly perDrop: number; readonly perSpecimen: number };
  /** The protocol as it is written: what its test costs and how near it comes. */
  readonly asWritten: Answer<PlannedPrecision>;
  /** Answers to what was asked for; null where it was not. */
  readonly precision: (Answer<PlannedPrecision> & { readonly wished: number }) | null;
  readonly gain: (Answer<PlannedGain> & { readonly wished: number; readonly wishedPower: number }) | null;
  /** What the specimens at hand can show, shared out between two constructions; null where nobody says how many. */
  readonly atHand: (Answer<PlannedGain> & { readonly specimens: number }) | null;
  readonly proposal: Proposal | null;
  readonly sheet: readonly SheetRow[];
  readonly defaults: readonly string[];
  readonly notes: readonly string[];
}

/** Start and step by what earlier tests found. */
export interface Proposal {
  /** J. */
  readonly median: number;
  readonly spread: number;
  readonly tests: number;
  /** mm. */
  readonly start: number;
  readonly step: number;
  readonly why: string;
}
