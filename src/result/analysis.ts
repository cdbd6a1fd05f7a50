import type { ConformanceStatus, ListedDeviation } from '../conformance/deviation.ts';
import type { EnergyDefinition } from '../documents/kinds.ts';
import type { ImportReport } from '../logs/export/import-report.ts';
import type { JudgedCriterion, Verdict } from './criterion.ts';
import type { Estimate, IntervalKind } from './estimate.ts';
import type { Goodness } from './goodness.ts';
import type { MassCorrection } from './mass-correction.ts';
import type { RegressionResult } from './regression.ts';
import type { UncertaintyResult } from './uncertainty.ts';

/** A file that a result rests on. */
export interface Input {
  readonly role:
    | 'log'
    | 'protocol'
    | 'rig'
    | 'construction'
    | 'specification'
    | 'run'
    | 'specimens'
    | 'amendments'
    | 'mountings'
    | 'checks'
    | 'study'
    | 'rides'
    | 'inspections'
    | 'events';
  /** As given on the command line or in the run file. */
  readonly path: string;
  readonly sha256: string;
  readonly bytes: number;
  /** Data rows of a table; null for documents. */
  readonly rows: number | null;
  /** What became of a log's rows and cells on their way in. */
  readonly import?: ImportReport;
}

/** One of several samples of a session: tyres of one construction under one state of the rig. */
export interface SampleSummary {
  /** What tells it from the others. */
  readonly name: string;
  readonly construction: string | null;
  readonly role: 'candidate' | 'reference';
  readonly rig: string | null;
  readonly rim: string | null;
  readonly specimens: number;
  readonly drops: number;
  readonly validDrops: number;
  readonly failures: number;
  readonly censored: number | null;
  /** Null where it is not judged. */
  readonly verdict: Verdict | null;
  /** How laws compare on its drops; not there unless asked for. */
  readonly goodness?: Goodness;
  /** Effects of conditions within it; not there where the protocol asks for none but the construction's. */
  readonly regression?: RegressionResult;
}

/** An entry of the journal of amendments as it was applied. */
export interface AmendmentEntry {
  /** Of the journal. */
  readonly file: string;
  readonly line: number;
  readonly log: string;
  readonly logLine: number;
  readonly drop: number | null;
  readonly specimen: string;
  readonly what: string;
  readonly old: string;
  readonly new: string;
  readonly reason: string;
  readonly by: string;
  readonly on: string;
}

/** When a test was done and with which gauges: what a later look at the rig asks of a stored result. */
export interface Period {
  /** Times of the first and last row, as written; null where the log has none. */
  readonly from: string | null;
  readonly to: string | null;
  /** Gauges that the log names. */
  readonly gauges: readonly string[];
}

/** What the energies of one rig's drops go by. */
export interface RigEnergy {
  /** `id@config`. */
  readonly rig: string;
  /** m/s². */
  readonly gravity: number;
  readonly gravityFrom: string;
  /** kg; null where its drops differ. */
  readonly mass: number | null;
  readonly massFrom: string;
  /** mm: heights that it can reach. */
  readonly limits: { readonly min: number | null; readonly max: number | null };
}

/** A specimen that was tested in place of another one. */
export interface SpecimenRetest {
  readonly specimen: string;
  readonly replaces: string;
  /** Code of the catalogue. */
  readonly reason: string;
  readonly approver: string;
  /** Of the table of specimens. */
  readonly file: string;
  readonly line: number;
}

/** What `analyze` finds in a drop test: the document of `--json`, less its constant head. */
export interface ImpactResult {
  readonly kind: 'impact';
  readonly run: string | null;
  readonly protocol: {
    readonly id: string;
    readonly version: string;
    readonly method: string;
    readonly title: string | null;
  };
  readonly rig: { readonly id: string; readonly config: string | null } | null;
  readonly constructions: readonly { readonly id: string; readonly revision: string }[];
  readonly specification: { readonly id: string; readonly version: string } | null;
  readonly inputs: readonly Input[];
  readonly energy: {
    readonly definition: EnergyDefinition;
    /** m/s². */
    readonly gravity: number;
    /** Where g came from: `standard`, `protocol`, `rig`, `rig site`. */
    readonly gravityFrom: string;
    /** kg; null where the drops differ. */
    readonly mass: number | null;
    readonly massFrom: string;
    /** Of each rig and configuration in the test, where they are several. */
    readonly rigs?: readonly RigEnergy[];
  };
  /** Falling masses that differ from the stated ones by at most 1 %, and are used; not there as a rule. */
  readonly massCorrections?: readonly MassCorrection[];
  /** Specimens that were tested in place of others, whose drops are kept and left out; not there as a rule. */
  readonly retests?: readonly SpecimenRetest[];
  readonly period?: Period;
  /** What the rig adds to the estimates; not there where its file states none. */
  readonly uncertainty?: UncertaintyResult;
  /** Set where profile intervals alone were asked for. */
  readonly intervals?: IntervalKind;
  /** What the documents left open and the tool took for granted. */
  readonly defaults: readonly string[];
  /** What is worth knowing and is no deviation: sentences. */
  readonly notes: readonly string[];
  readonly conformance: {
    readonly status: ConformanceStatus;
    /** Why the status is `invalid`; null otherwise. */
    readonly why: string | null;
    readonly deviations: readonly ListedDeviation[];
    /** Drops left out of the estimates, by cause. */
    readonly excluded: number;
  };
  readonly sample: {
    readonly specimens: number;
    readonly drops: number;
    readonly validDrops: number;
    readonly failures: number;
    readonly censored: number | null;
  };
  /** The drops in order, for pictures: level by drop. */
  readonly path: readonly {
    readonly line: number;
    readonly specimen: string;
    readonly series: string | null;
    /** mm. */
    readonly height: number;
    /** kg; only where the protocol varies it, so that levels are masses. */
    readonly mass?: number | null;
    /** J, by the result's definition; null where it cannot be had. */
    readonly energy: number | null;
    readonly outcome: 'failed' | 'survived' | 'not-evaluable' | null;
    readonly used: boolean;
  }[];
  /** The samples that the drops speak of, where they are several: constructions, rigs. Empty for one. */
  readonly samples: readonly SampleSummary[];
  /** What was amended since the log was written, in the order of the journal: both states. */
  readonly amendments: readonly AmendmentEntry[];
  /** The run that this one repeats; null as a rule. */
  readonly replaces: {
    readonly run: string;
    readonly path: string;
    readonly sha256: string;
    readonly reason: string;
    readonly approver: string;
  } | null;
  /** Why every number waits for something to be settled, and no verdict may be given; empty as a rule. */
  readonly provisional: readonly string[];
  readonly estimates: readonly Estimate[];
  /** How laws compare on the drops, of several samples those of the first; null where it was not asked for. */
  readonly goodness: Goodness | null;
  /** Effects of conditions over all samples; null where the protocol asks for none. */
  readonly regression: RegressionResult | null;
  readonly criteria: readonly JudgedCriterion[];
  readonly verdict: Verdict | null;
}
