import type { RunRequest } from '../documents/kinds.ts';
import type { LawName } from '../statistics/law.ts';
import type { ImpactResult } from './analysis.ts';

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
  readonly confidence: number;
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

/** One test with all that a report says of it. */
export interface ReportedTest {
  readonly title: string | null;
  readonly result: ImpactResult;
  readonly request: RunRequest;
  readonly method: ReportedMethod;
  readonly constructions: readonly ReportedConstruction[];
  readonly conditions: readonly ReportedCondition[];
  readonly samples: readonly ReportedSample[];
  readonly exclusions: readonly Exclusion[];
  readonly photos: readonly Photo[];
  /** First and last day of the log, `2026-03-09`, in the log's own time; null where it has no times. */
  readonly days: { readonly first: string; readonly last: string } | null;
}
