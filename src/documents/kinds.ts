import type { ExportProfile } from '../logs/export/profile.ts';
import type { Quantity } from '../quantity/quantity.ts';
import type { LawName } from '../statistics/law.ts';
import type { EstimatorName } from './estimator-names.ts';
import type { UncertaintySource } from './uncertainty-source.ts';

/** What counts as the energy of a drop; one definition for a whole series (CONTRACT: `energy`). */
export type EnergyDefinition = 'potential' | 'potential-with-compression' | 'kinetic';

/** Where a document stands, so that a later finding about it can name its place. */
export interface Source {
  readonly path: string;
  readonly sha256: string;
  readonly bytes: number;
  /** One-based line and column of a value (or, with `key`, of its key), by its path in the document. */
  locate(path: readonly (string | number)[], part?: 'key' | 'value'): { line: number; column: number };
}

/** When a series ends. Every count is of valid drops; at least one of the keys is there. */
export interface Stop {
  readonly drops?: number;
  readonly specimens?: number;
  readonly reversals?: number;
  /** Goes on after `drops` until the rarer outcome was seen this often. */
  readonly rarer?: number;
  /** The end of a series that `rarer` would prolong. */
  readonly atMost?: number;
}

export interface Sites {
  readonly perSpecimen: number | null;
  /** Degrees between neighbouring sites. */
  readonly spacing: number | null;
  readonly each: 'same-spot' | 'new-spot' | 'series-per-site';
  /** Stretches of the circumference that may not be hit, in degrees. */
  readonly avoid: readonly { readonly center: number; readonly half: number }[];
}

/** Height above contact between neighbouring levels: mm, or a share of the level below. */
export type Step =
  | { readonly kind: 'additive'; readonly size: number }
  | { readonly kind: 'ratio'; readonly ratio: number };

/** How a drop test goes from drop to drop. */
export type ImpactMethod =
  | 'up-and-down'
  | 'transformed-up-and-down'
  | 'rising-height'
  | 'fixed-level'
  | 'langlie'
  | 'd-optimal';

/** Mounting as a protocol plans it; null is left to the lab. */
export interface MountingPlan {
  /** mm, inside. */
  readonly rimWidth: number | null;
  readonly rimType: string | null;
  /** Material of the tube. */
  readonly tube: string | null;
  /** ml; 0 is none. */
  readonly sealant: number | null;
  /** `none`, or which. */
  readonly insert: string | null;
  /** N·m, of the axle nuts. */
  readonly torque?: Quantity | null;
}

/** How tightness is looked at after a hit. */
export interface LeakCheck {
  /** In the words of the log's column. */
  readonly method: string | null;
  /** s that the pressure is watched. */
  readonly hold: number | null;
  /** bar lost over that time, beyond which a tyre has failed. */
  readonly loss: number | null;
}

export interface ImpactProtocol {
  readonly format: 'tirelab.protocol/1';
  readonly kind: 'impact';
  readonly id: string;
  readonly version: string;
  readonly title: string | null;
  readonly method: ImpactMethod;
  readonly failure: string | null;
  /** Falling mass in kg, with the tolerance within which a log's mass may differ. */
  readonly mass: Quantity | null;
  /** m/s². */
  readonly gravity: Quantity | null;
  readonly energy: EnergyDefinition;
  /** What moves from drop to drop: the height, or at one height the falling mass. */
  readonly vary: 'height' | 'mass';
  /** mm: the one height of a protocol that varies the mass; null otherwise. */
  readonly height: number | null;
  /** mm (kg where the mass is varied, here and below); null for methods that choose their levels. */
  readonly start: number | null;
  readonly step: Step | null;
  /** Fixed-level only, rising. */
  readonly levels: readonly number[] | null;
  readonly perLevel: number | null;
  /** Survivals in a row before a transformed up-and-down series rises. */
  readonly survivalsToRaise: number | null;
  /** D-optimal only: where the median is thought to lie, and the spread. */
  readonly guess: { readonly lowest: number; readonly highest: number; readonly spread: number } | null;
  /** How far a height may lie from its planned level, mm. */
  readonly heightTolerance: number;
  /** Of heights in mm, or masses in kg. */
  readonly limits: { readonly min: number | null; readonly max: number | null };
  /** bar; by tyre size where the lab sets it so. */
  readonly pressure: Quantity | Readonly<Record<string, Quantity>> | null;
  /** °C. */
  readonly temperature: Quantity | null;
  readonly sites: Sites;
  readonly afterFailure: 'retire' | 'new-site';
  /** Damage codes that count as a failure; without it every damage of the tyre does. */
  readonly failureModes?: readonly string[] | null;
  /** What every tyre is to be mounted on and with; what is left out is as most of them were. */
  readonly mounting?: MountingPlan | null;
  /** Hours of conditioning before the first hit, and between cure and first hit. */
  readonly preparation?: { readonly conditioning: number | null; readonly age: number | null } | null;
  /** How tightness is looked at; null where the protocol leaves it open. */
  readonly leakCheck?: LeakCheck | null;
  /** Codes of departures that weigh heavier than usual. */
  readonly heavier?: readonly string[];
  /** Whether the rig is to be checked before the first drop of each day. */
  readonly rigCheck?: 'daily' | null;
  readonly stop: Stop | null;
  /** Share of its strength that each hit takes from a specimen; `estimated` from the data; null: taken as nought. */
  readonly damagePerHit: number | 'estimated' | null;
  /** Estimators asked for beside those that a method has anyway. */
  readonly estimators: readonly EstimatorName[];
  /** What is regressed on, and what estimates are adjusted to; null where nothing is. */
  readonly regression: Regression | null;
  readonly distribution: LawName;
  /** Fraction, such as 0.95. */
  readonly confidence: number;
  /** Keys that the document left out and what was taken instead: said in every output. */
  readonly defaults: readonly string[];
  readonly source: Source;
}

/** What may move the strength beside chance: columns of the log, or the construction of the specimen. */
export type CovariateName =
  | 'construction'
  | 'pressure'
  | 'temperature'
  | 'mass'
  | 'rig'
  | 'session'
  | 'series'
  | 'operator';

export type { EstimatorName } from './estimator-names.ts';

export interface Regression {
  readonly covariates: readonly CovariateName[];
  /** Pairs whose effects are to be looked at together. */
  readonly interactions: readonly (readonly [CovariateName, CovariateName])[];
  /** Conditions that estimates are adjusted to, beside the unadjusted ones. */
  readonly adjust: readonly ('pressure' | 'temperature')[];
}

export interface EnduranceBlock {
  readonly block: string;
  /** km; of a block that goes by revolutions, once the drum is known. */
  readonly distance: number | null;
  /** s. */
  readonly duration: number | null;
  /** km/h, N, bar, °C. */
  readonly speed: Quantity;
  readonly load: Quantity;
  readonly pressure: Quantity | null;
  readonly temperature: Quantity | null;
  /** Of the drum, where the block goes by them. */
  readonly revolutions?: number | null;
  /** s at its begin in which speed and load are reached. */
  readonly ramp?: number | null;
  /** Whether cleats are on the drum; null where nothing is said. */
  readonly cleats?: boolean | null;
}

/** When a drum test is looked at: at kilometres of its own, and again and again. */
export interface InspectionPlan {
  /** km. */
  readonly at: readonly number[];
  /** km. */
  readonly every: number | null;
}

/** How often a drum test may stand still, and from how many seconds on it counts. */
export interface PauseRule {
  readonly allowed: number;
  readonly from: number;
}

/** What ends a drum test beside its schedule: bar, N, °C, each null where nothing is set. */
export interface DrumStopRule {
  readonly pressureBelow: number | null;
  readonly loadBelow: number | null;
  readonly tyreAbove: number | null;
}

/** How blocks of different load are put together: by an inverse power of the load. */
export interface LoadEquivalence {
  /** N. */
  readonly load: number;
  readonly exponent: number;
  /** Standard uncertainty of the exponent and its degrees of freedom; null where nothing is stated (then unbounded). */
  readonly uncertainty: number | null;
  readonly degrees: number | null;
}

export interface EnduranceProtocol {
  readonly format: 'tirelab.protocol/1';
  readonly kind: 'endurance';
  readonly id: string;
  readonly version: string;
  readonly title: string | null;
  readonly schedule: readonly EnduranceBlock[];
  /** mm of tread at which a tyre is worn out; null where none is set. */
  readonly wearLimit?: number | null;
  readonly inspections?: InspectionPlan | null;
  readonly pauses?: PauseRule | null;
  /** Capped: set cold, the valve then closed. Held: corrected while the test runs. */
  readonly pressureRule?: 'capped' | 'held' | null;
  readonly stop?: DrumStopRule | null;
  /** Null as a rule: nothing is made of different loads. */
  readonly equivalence?: LoadEquivalence | null;
  /** °C to which pressures are referred; null leaves them as they were read. */
  readonly pressureAt?: number | null;
  /** Hz. */
  readonly sampling: number | null;
  readonly distribution: LawName;
  readonly confidence: number;
  readonly defaults: readonly string[];
  readonly source: Source;
}

export type Protocol = ImpactProtocol | EnduranceProtocol;

/** A falling mass that turned out not to be the stated one, by at most 1 %: by what it was shown, and when. */
export interface ProvenMass {
  readonly mass: Quantity;
  readonly by: string;
  readonly on: string;
}

/** What turns under the tyre. */
export interface Drum {
  /** m. */
  readonly diameter: number;
  /** Cleats on its circumference. */
  readonly cleats: number;
  /** Places of tyres on it, by name; empty where there is one. */
  readonly positions: readonly string[];
}

/** How a rig stood for some time: `rig@config`. */
export interface RigConfiguration {
  readonly config: string | null;
  /** First and last day (`2026-03-09`); null where it is open. */
  readonly from: string | null;
  readonly to: string | null;
  readonly mass: Quantity | null;
  readonly provenMass: ProvenMass | null;
  /** What strikes or is struck, in words: shape, width, edge. */
  readonly striker: string | null;
}

/** A rig; what may change over time is that of its latest configuration. */
export interface Rig {
  readonly format: 'tirelab.rig/1';
  readonly id: string;
  readonly config: string | null;
  /** Every configuration, the earliest first; one as a rule. */
  readonly configurations?: readonly RigConfiguration[];
  readonly title: string | null;
  readonly mass: Quantity | null;
  readonly provenMass?: ProvenMass | null;
  /** Degrees north; metres above the ellipsoid, in practice above sea level. */
  readonly site: { readonly latitude: number; readonly altitude: number } | null;
  readonly gravity: Quantity | null;
  /** mm. */
  readonly resolution: number | null;
  readonly limits: { readonly min: number | null; readonly max: number | null };
  /** Null for a rig that drops. */
  readonly drum?: Drum | null;
  /** What is known of the uncertainty of its energies; empty where nothing is stated. */
  readonly uncertainty?: readonly UncertaintySource[];
  /** How its export is written; null where it writes the plain form. */
  readonly export?: ExportProfile | null;
  readonly source: Source;
}

export interface Construction {
  readonly format: 'tirelab.construction/1';
  readonly id: string;
  readonly revision: string;
  readonly title: string | null;
  readonly status: ConstructionStatus | null;
  readonly category: string | null;
  readonly size: string | null;
  /** `id@revision`. */
  readonly parent: string | null;
  readonly declared: readonly string[];
  /** Factors that differ because of the declared ones. */
  readonly consequences?: readonly string[];
  /** Every leaf of `factors` by its dotted path, as written. */
  readonly factors: Readonly<Record<string, string>>;
  readonly source: Source;
}

/** How far a construction has come; a released revision is never changed. */
export type ConstructionStatus = 'draft' | 'prototype' | 'released' | 'withdrawn';

export type DecisionRule = 'lower-bound' | 'simple-acceptance' | 'guard-band';

export interface Criterion {
  readonly id: string;
  /** `id@version` of the protocol that gives the evidence; null for measured (`each`) criteria. */
  readonly protocol: { readonly id: string; readonly version: string | null } | null;
  readonly quantity: string;
  readonly probability: number | null;
  /** For reliability: distance in km. */
  readonly at: number | null;
  readonly limit: {
    readonly atLeast?: number;
    readonly atMost?: number;
    readonly within?: { readonly lower: number; readonly upper: number };
    readonly unit: string;
  };
  readonly rule: DecisionRule;
  readonly confidence: number;
  /** Width of the band in the limit's unit; guard-band only, where null is z times the standard error. */
  readonly guard: number | null;
  readonly minSpecimens: number | null;
  /** Which estimate of a drop test is judged: the likelihood's headline, or that of one hit on a fresh tyre. */
  readonly method: 'censored-likelihood' | 'specimen-effect';
  readonly each: boolean;
  /** Who shows it, where the lab does not: `accredited`. */
  readonly external: string | null;
  /** Whether a rider's safety hangs on it: then only the safety role may waive it. */
  readonly safety: boolean;
}

export interface Specification {
  readonly format: 'tirelab.specification/1';
  readonly id: string;
  readonly version: string;
  readonly title: string | null;
  readonly appliesTo: Readonly<Record<string, string>>;
  readonly criteria: readonly Criterion[];
  /** What the document left out and what was taken instead: said in every output. */
  readonly defaults: readonly string[];
  readonly source: Source;
}

/** A criterion that a construction need not meet, on somebody's word, until a day. */
export interface Waiver {
  readonly format: 'tirelab.waiver/1';
  readonly id: string;
  readonly title: string | null;
  /** `id@version`. */
  readonly specification: string;
  readonly criterion: string;
  /** `id@revision`. */
  readonly construction: string;
  readonly batches: string | null;
  readonly market: string | null;
  readonly owner: string;
  readonly role: 'quality' | 'technical' | 'safety';
  readonly reason: string;
  /** `2026-09-30`: the last day on which it counts. */
  readonly expires: string;
  readonly risk: string | null;
  readonly action: string | null;
  readonly source: Source;
}

/** What a report says beside its numbers; null where the run leaves it out. */
export interface RunRequest {
  readonly question: string | null;
  readonly decision: string | null;
  readonly customer: string | null;
  readonly laboratory: string | null;
  readonly place: string | null;
  readonly rule: string | null;
  readonly agreed: string | null;
  readonly received: string | null;
  readonly tested: string | null;
  readonly report: string | null;
  readonly issued: string | null;
  readonly authorised: string | null;
  readonly replaces: string | null;
}

export interface Run {
  readonly format: 'tirelab.run/1';
  readonly id: string;
  readonly title: string | null;
  /** Paths as written, relative to the run file. */
  readonly protocol: string;
  readonly rig: string | null;
  readonly constructions: readonly (string | { readonly file: string; readonly revision: string })[];
  readonly specification: string | null;
  readonly specimens: string | null;
  /** A log that another rig wrote than the run's names it. */
  readonly logs: readonly (string | { readonly file: string; readonly rig: string })[];
  readonly amendments: string | null;
  readonly mountings: string | null;
  readonly checks: string | null;
  /** The run that this one repeats; both are kept. */
  readonly replaces: { readonly run: string; readonly reason: string; readonly approver: string } | null;
  readonly inspections: string | null;
  readonly events: string | null;
  readonly request: RunRequest;
  readonly photos: readonly { readonly file: string; readonly caption: string }[];
  readonly source: Source;
}
