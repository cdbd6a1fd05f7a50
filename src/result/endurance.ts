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
  readonly distance: LedgerEntry & { readonly why: string | null };
  readonly lives: readonly LifeEntry[];
  readonly survival: readonly SurvivalEntry[];
  readonly estimates: readonly EnduranceEstimate[];
  readonly criteria: readonly JudgedCriterion[];
  readonly verdict: Verdict | null;
}
