import type { Statement } from '../statistics/uncertainty/standard-uncertainty.ts';

/** What the energy of a drop depends on, and the unit in which its uncertainty is kept. */
export const UNCERTAIN_INPUTS = {
  mass: 'kg',
  gravity: 'm/s2',
  height: 'mm',
  loss: '1',
  pressure: 'bar',
  temperature: 'K',
} as const;

export type UncertainInput = keyof typeof UNCERTAIN_INPUTS;

/** One source of uncertainty as the rig's file states it. */
export interface UncertaintySource {
  readonly of: UncertainInput;
  readonly source: string;
  /** What was stated, in the unit of the input. */
  readonly statement: Statement;
  readonly standardUncertainty: number;
  /** Infinity where it is taken as known. */
  readonly degrees: number;
  /** `common` to all drops, or drawn anew with each `drop`. */
  readonly scope: 'common' | 'drop';
  /** Relative change of the energy for a relative change of the pressure; for a kelvin of temperature. Null for the others. */
  readonly sensitivity: number | null;
}
