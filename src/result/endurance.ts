import type { ConformanceStatus, ListedDeviation } from '../conformance/deviation.ts';
import type { LawName } from '../statistics/law.ts';
import type { Input, Period } from './analysis.ts';
import type { JudgedCriterion, Verdict } from './criterion.ts';
import type { Estimate } from './estimate.ts';

/** An estimate of a life, a reliability or a wear. */
export interface EnduranceEstimate extends Estimate {
  /** km, of a reliability. */
  readonly at?: number;
}

/** km of the ledger; null where no log of the drum was given. */
export interface LedgerEntry {
  readonly logged: number | null;
  readonly atCondition: number | null;
  readonly excluded: number | null;
  readonly unverified: number | null;
}

/** One channel over one block. */
export interface ChannelEntry {
  readonly channel: string;
  readonly unit: string;
  /** Share of the turning time within the limits; null without limits or values. */
  readonly inTolerance: number | null;
  readonly mean: number | null;
  readonly min: number | null;
  readonly max: number | null;
}

/** One block of the schedule, planned and run. */
export interface BlockEntry {
  readonly block: string;
  readonly planned: { readonly distance: number | null; readonly time: number | null };
  /** km and s; null where no log of the drum was given. */
  readonly logged: { readonly distance: number | null; readonly time: number | null };
  readonly distance: LedgerEntry;
  readonly channels: readonly ChannelEntry[];
}

/** A sign of failure in the log: a candidate for a person to look at, never a result by itself. */
export interface SignEntry {
  /** `pressure falls`, `load jumps`, `axle height jumps`, `vibration rises`, `temperature rises`. */
  readonly sign: string;
  readonly channel: string;
  readonly unit: string;
  readonly file: string;
  readonly line: number;
  /** ISO 8601 in UTC, or seconds since the start where the log has no clock. */
  readonly time: string | number;
  /** km run up to it, every one counted. */
  readonly distance: number;
  readonly before: number;
  readonly after: number;
  readonly minutes: number;
}

/** What one cell of a strip was: outside is told before within, and within before standing. */
export type StripState = 'within' | 'below' | 'above' | 'both' | 'missing' | 'standing' | 'nothing';

/** The course of one channel, cell by cell. */
export interface StripEntry {
  readonly channel: string;
  /** Set value and tolerance of each block, in order, each once: `25 km/h ± 2 %`. */
  readonly limits: readonly string[];
  /** km run outside the limits; the least and greatest value while the drum was logged. */
  readonly outside: number;
  readonly min: number | null;
  readonly max: number | null;
  readonly unit: string;
  readonly minutesPerCell: number;
  readonly cells: readonly StripState[];
}

/** A night by the clock of the laboratory, 22 to 6 h. */
export interface NightEntry {
  /** The evening's day by that clock, `2026-03-09`. */
  readonly day: string;
  /** km run and seconds stood. */
  readonly distance: number;
  readonly stood: number;
  /** What began in it: how often, and the clock, file and line of the first. */
  readonly alarms: readonly {
    readonly what: string;
    readonly count: number;
    readonly clock: string;
    readonly file: string;
    readonly line: number;
  }[];
}

/** One tyre of a drum with several positions. */
export interface TyreEntry {
  /** Null where nobody noted who stood there. */
  readonly specimen: string | null;
  /** ISO 8601; null where nothing bounds it. */
  readonly stints: readonly {
    readonly position: string;
    readonly from: string | null;
    readonly to: string | null;
  }[];
  readonly distance: LedgerEntry;
  readonly schedule: readonly BlockEntry[];
}

/** How one tyre ended. */
export interface LifeEntry {
  readonly specimen: string;
  readonly line: number;
  /** `failed`: the life lies in (lower, upper]; `suspended`: beyond lower. km. */
  readonly outcome: 'failed' | 'suspended';
  readonly lower: number | null;
  readonly upper: number | null;
  readonly cause: string | null;
  /** Share failed at which it stands on probability paper; null for suspensions and where the order is not known. */
  readonly medianRank: number | null;
}

/** The law-free curve of survival: after each distance with failures. */
export interface SurvivalEntry {
  /** km: the failures lie in (from, to]. */
  readonly from: number;
  readonly to: number | null;
  readonly survival: number;
  readonly standardError: number | null;
}

/** What `analyze` finds in a drum test: the document of `--json`, less its constant head. */
export interface EnduranceResult {
  readonly kind: 'endurance';
  readonly run: string | null;
  readonly protocol: {
    readonly id: string;
    readonly version: string;
    readonly title: string | null;
    readonly distribution: LawName;
  };
  readonly rig: { readonly id: string; readonly config: string | null } | null;
  readonly constructions: readonly { readonly id: string; readonly revision: string }[];
  readonly specification: { readonly id: string; readonly version: string } | null;
  readonly inputs: readonly Input[];
  readonly period?: Period;
  readonly defaults: readonly string[];
  readonly notes: readonly string[];
  readonly conformance: {
    readonly status: ConformanceStatus;
    readonly why: string | null;
    readonly deviations: readonly ListedDeviation[];
    readonly excluded: number;
  };
  readonly sample: {
    readonly specimens: number;
    readonly drops: number;
    readonly validDrops: number;
    readonly failures: number;
    readonly suspensions: number;
    readonly censored: number | null;
  };
  readonly schedule: readonly BlockEntry[];
  /** Of several tyres on one drum that of the first, as `schedule`. */
  readonly distance: LedgerEntry & { readonly why: string | null };
  /** Empty for a drum with one position. */
  readonly tyres: readonly TyreEntry[];
  readonly signs: { readonly count: number; readonly listed: readonly SignEntry[] };
  readonly strips: readonly StripEntry[];
  /** Empty where nothing tells the zone of the laboratory's clock. */
  readonly nights: readonly NightEntry[];
  readonly lives: readonly LifeEntry[];
  readonly survival: readonly SurvivalEntry[];
  readonly estimates: readonly EnduranceEstimate[];
  readonly criteria: readonly JudgedCriterion[];
  readonly verdict: Verdict | null;
}
