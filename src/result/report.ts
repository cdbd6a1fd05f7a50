import type { RunRequest } from '../documents/kinds.ts';
import type { LawName } from '../statistics/law.ts';
import type { ImpactResult } from './analysis.ts';
import type { EnduranceResult } from './endurance.ts';

/** The share that fails over the energy, with a pointwise interval: what a response curve is drawn from. */
export interface ResponseCurve {
  readonly distribution: LawName;
  /** Of the interval at each point, two-sided. */
  readonly level: number;
  readonly points: readonly {
    /** J. */
    readonly energy: number;
    /** Share failed; null where the likelihood has no single best law. */
    readonly failure: number | null;
    readonly lower: number;
    readonly upper: number;
  }[];
}

/** What is known of one tyre, from the register and from its drops. */
export interface ReportedTyre {
  readonly specimen: string;
  /** g. */
  readonly mass: number | null;
  /** J between which its strength lies, by the drops that count; null where it is open. */
  readonly lower: number | null;
  readonly upper: number | null;
  readonly drops: number;
}

/** A condition as the protocol asks for it and as the log has it. */
export interface ReportedCondition {
  readonly name: 'mass' | 'pressure' | 'temperature';
  /** As the protocol, or the rig, writes it; null where nothing is asked. */
  readonly planned: string | null;
  readonly unit: string;
  /** Ends and mean of what was logged; null where the log has none. */
  readonly logged: {
    readonly least: number;
    readonly mean: number;
    readonly most: number;
    readonly drops: number;
  } | null;
}

/** A picture that the run names, read and known to be what it says. */
export interface Photo {
  readonly path: string;
  readonly caption: string;
  readonly type: 'image/png' | 'image/jpeg';
  readonly base64: string;
  readonly sha256: string;
  readonly bytes: number;
}

/** A drop that was left out, and why. */
export interface Exclusion {
  readonly drop: number;
  readonly specimen: string;
  readonly line: number;
  /** mm. */
  readonly height: number;
  /** Code of the catalogue; null where the log gives no reason. */
  readonly because: string | null;
  readonly remark: string | null;
}

/** What was tested, as its document describes it. */
export interface ReportedConstruction {
  readonly id: string;
  readonly revision: string;
  readonly title: string | null;
  readonly category: string | null;
  readonly size: string | null;
  readonly parent: string | null;
  readonly declared: readonly string[];
  readonly factors: Readonly<Record<string, string>>;
}

/** The method as the protocol words it. */
export interface ReportedMethod {
  readonly failure: string | null;
  readonly distribution: LawName;
  /** mm or kg, as the unit says; null where the method has no start. */
  readonly start: string | null;
  readonly step: string | null;
  readonly stop: string | null;
}

/** Tyres of one strength: all of a test as a rule, those of one construction in a session with several. */
export interface ReportedSample {
  /** As the entries of the result name it; null for the only one. */
  readonly name: string | null;
  /** `id@revision`; null where it is not told. */
  readonly construction: string | null;
  readonly isReference: boolean;
  readonly path: ImpactResult['path'];
  readonly tyres: readonly ReportedTyre[];
  readonly curve: ResponseCurve | null;
}

/** What a report says of any test, whatever was tested. */
export interface ReportedBase {
  readonly title: string | null;
  readonly request: RunRequest;
  readonly constructions: readonly ReportedConstruction[];
  readonly photos: readonly Photo[];
  /** Two-sided, of the protocol. */
  readonly confidence: number;
  /** First and last day of the log, `2026-03-09`, in the log's own time; null where it has no times. */
  readonly days: { readonly first: string; readonly last: string } | null;
}

/** One drop test with all that a report says of it. */
export interface ReportedTest extends ReportedBase {
  readonly result: ImpactResult;
  readonly method: ReportedMethod;
  readonly conditions: readonly ReportedCondition[];
  readonly samples: readonly ReportedSample[];
  readonly exclusions: readonly Exclusion[];
}

/** A minute of one channel, as the reduction has it; null where there was no value. */
export interface TimelineMinute {
  /** Milliseconds of its begin. */
  readonly time: number;
  readonly running: boolean;
  readonly mean: number | null;
  readonly min: number | null;
  readonly max: number | null;
}

/** A stretch of the schedule with its set value and the band that is allowed; milliseconds. */
export interface TimelineStretch {
  readonly from: number;
  readonly to: number;
  readonly value: number;
  readonly lower: number | null;
  readonly upper: number | null;
}

/** One channel of a drum test over its time. */
export interface ReportedTimeline {
  readonly channel: string;
  readonly unit: string;
  readonly minutes: readonly TimelineMinute[];
  readonly schedule: readonly TimelineStretch[];
}

/** The line through the tread depths of one tyre, to be drawn: mm over km, with the interval of the line. */
export interface WearLine {
  readonly specimen: string;
  readonly points: readonly {
    readonly distance: number;
    readonly depth: number;
    readonly lower: number;
    readonly upper: number;
  }[];
}

/** Tread depths over the distance: mm and km. */
export interface ReportedWear {
  readonly readings: readonly {
    readonly specimen: string;
    readonly distance: number;
    readonly depth: number;
  }[];
  /** The line of each tyre with readings enough, and its interval. */
  readonly lines: readonly WearLine[];
  readonly limit: number | null;
}

/** One drum test with all that a report says of it. */
export interface ReportedDrum extends ReportedBase {
  readonly result: EnduranceResult;
  readonly timelines: readonly ReportedTimeline[];
  /** Milliseconds, by the laboratory's clock; empty where neither rig nor log tells its zone. */
  readonly nights: readonly { readonly from: number; readonly to: number }[];
  /** Pointwise interval of the share failed. */
  readonly band: readonly { readonly life: number; readonly lower: number; readonly upper: number }[];
  readonly wear: ReportedWear;
}

export type ReportedRun = ReportedTest | ReportedDrum;

export function isDrum(run: ReportedRun): run is ReportedDrum {
  return run.result.kind === 'endurance';
}
