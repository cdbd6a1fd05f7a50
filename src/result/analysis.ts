import type { ConformanceStatus, ListedDeviation } from '../conformance/deviation.ts';
import type { EnergyDefinition } from '../documents/kinds.ts';
import type { ImportReport } from '../logs/export/import-report.ts';
import type { JudgedCriterion, Verdict } from './criterion.ts';
import type { Estimate } from './estimate.ts';
import type { Goodness } from './goodness.ts';
import type { RegressionResult } from './regression.ts';

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
  };
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
    /** J, by the result's definition; null where it cannot be had. */
    readonly energy: number | null;
    readonly outcome: 'failed' | 'survived' | 'not-evaluable' | null;
    readonly used: boolean;
  }[];
  readonly estimates: readonly Estimate[];
  /** How laws compare on the drops; null where it was not asked for. */
  readonly goodness: Goodness | null;
  /** Effects of conditions; null where the protocol asks for none. */
  readonly regression: RegressionResult | null;
  readonly criteria: readonly JudgedCriterion[];
  readonly verdict: Verdict | null;
}
