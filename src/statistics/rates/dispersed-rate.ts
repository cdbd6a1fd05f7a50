import { studentLaw } from '../laws/student.ts';
import { overDispersion } from './over-dispersion.ts';
import type { Count } from './poisson-rate.ts';
import type { Range } from './proportion.ts';

/** A rate over groups that scatter more than chance has it. */
export interface DispersedRate extends Range {
  readonly rate: number;
  /** Statistic over degrees, as found; below 1 the interval takes 1. */
  readonly dispersion: number;
  /** Of ln rate. */
  readonly standardErrorOfLog: number;
}

/**
 * The common rate of several groups (riders) with an interval that allows for their differing: ln rate ± t·√(dispersion/events), t with
 * one degree fewer than groups (quasi-Poisson; McCullagh & Nelder 1989, 6.2.3). An exact Poisson interval beside it is the one for
 * riders all alike.
 *
 * @throws RangeError as overDispersion does
 */
export function dispersedRate(groups: readonly Count[], level: number): DispersedRate {
  const { ratio: dispersion, degrees } = overDispersion(groups);
  const events = groups.reduce((sum, group) => sum + group.events, 0);
  const exposure = groups.reduce((sum, group) => sum + group.exposure, 0);
  const rate = events / exposure;
  const standardErrorOfLog = Math.sqrt(Math.max(1, dispersion) / events);
  const factor = Math.exp(studentLaw(degrees).quantileOfSf(0.5 * (1 - level)) * standardErrorOfLog);
  return { rate, lower: rate / factor, upper: rate * factor, dispersion, standardErrorOfLog };
}
