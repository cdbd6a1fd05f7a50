import type { Input } from './analysis.ts';
import type { UncertaintyResult } from './uncertainty.ts';

/** One property of a rig held against its limits. */
export interface RigProperty {
  readonly property: 'velocity-ratio' | 'height-scale' | 'mass';
  readonly unit: string;
  readonly readings: number;
  readonly mean: number;
  readonly standardDeviation: number | null;
  /** Of the mean, 95 %, by Student; null for one reading. */
  readonly interval: { readonly level: number; readonly lower: number; readonly upper: number } | null;
  readonly limits: { readonly lower: number; readonly upper: number };
  readonly standing: 'good' | 'out';
  /** What it says and, where it is out, what settles it. */
  readonly why: string;
}

/** `tirelab rig`: whether a rig does what its file says, and how well its energies are known. */
export interface RigCheckResult {
  readonly inputs: readonly Input[];
  readonly rig: { readonly id: string; readonly config: string | null };
  /** m/s² and where it is from. */
  readonly gravity: number;
  readonly gravityFrom: string;
  readonly properties: readonly RigProperty[];
  /** Share of the energy that arrives: the square of the velocity ratio; null without speeds. */
  readonly efficiency: number | null;
  /** Of one drop at the energy asked for; null where the rig states none or has no mass. */
  readonly uncertainty: Pick<
    UncertaintyResult,
    'at' | 'lines' | 'common' | 'drop' | 'whole' | 'check'
  > | null;
  readonly notes: readonly string[];
  readonly standing: 'good' | 'out' | 'not-checked';
}
