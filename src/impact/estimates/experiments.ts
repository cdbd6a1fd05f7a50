import type { ImpactProtocol } from '../../documents/kinds.ts';
import type { Experiment } from '../../statistics/calibration/experiment.ts';
import type { StandardLaw } from '../../statistics/laws/standard-law.ts';
import type { Levels } from '../rules/levels.ts';
import {
  type ChosenSeries,
  chosenWalk,
  type FixedHit,
  fixedWalk,
  risingWalk,
  type SteppedSeries,
  steppedWalk,
} from './walks.ts';

/** What every simulated test of drops has beside its walk. */
export interface ExperimentBase {
  readonly law: StandardLaw;
  /** Share of the variance that lies between tyres; 0 where each is hit once. */
  readonly share: number;
  /** The energy of a level (mm, or kg) on the fitted scale. */
  energyAt(level: number): number;
}

/** Up-and-down series, one after another; null where the levels are no rising energies. */
export function steppedExperiment(
  series: readonly SteppedSeries[],
  protocol: ImpactProtocol,
  base: ExperimentBase,
): Experiment | null {
  const { heights, ...walked } = steppedWalk(series, protocol);
  const levels = risingEnergies(heights, base);
  if (levels === null) return null;
  const middle = Math.floor(levels.length / 2);
  const step = levels[middle]! - levels[middle - 1]!;
  return { ...shared(base), ...walked, levels, step, reading: 'hits', isSequential: true };
}

/** Rises of so many specimens from the start up to the level with index `highest`. */
export function risingExperiment(
  levels: Levels,
  highest: number,
  specimens: number,
  base: ExperimentBase,
): Experiment | null {
  const from = levels.within(0);
  const heights = Array.from({ length: highest - from + 1 }, (_, i) => levels.at(from + i));
  const energies = risingEnergies(heights, base);
  if (energies === null) return null;
  return {
    ...shared(base),
    levels: energies,
    step: meanStep(energies),
    mostDrops: specimens * energies.length,
    mostSpecimens: specimens,
    reading: 'rises',
    isSequential: false,
    walk: risingWalk(energies.length, specimens),
  };
}

/** Hits at fixed levels (rising) that are made whatever comes of them. */
export function fixedExperiment(
  planned: readonly number[],
  hits: readonly FixedHit[],
  base: ExperimentBase,
): Experiment | null {
  const levels = risingEnergies(planned, base);
  if (levels === null) return null;
  return {
    ...shared(base),
    levels,
    step: meanStep(levels),
    mostDrops: hits.length,
    mostSpecimens: 1 + hits.reduce((most, { specimen }) => Math.max(most, specimen), 0),
    reading: 'hits',
    isSequential: false,
    walk: fixedWalk(hits),
  };
}

/** A series whose levels the rule chooses itself, on a fine grid of them. */
export function chosenExperiment(
  series: ChosenSeries,
  resolution: number,
  base: ExperimentBase,
): Experiment | null {
  const levels = risingEnergies(series.levels, base);
  if (levels === null) return null;
  const { mostDrops } = series;
  return {
    ...shared(base),
    levels,
    step: resolution,
    mostDrops,
    mostSpecimens: mostDrops,
    reading: 'hits',
    isSequential: true,
    walk: chosenWalk(series),
  };
}

/**
 * What stands for the step where a rule chooses its levels: how finely a test has told failures from survivals. The gap
 * between them, or a quarter of the range in which both occur.
 *
 * @param highestSurvived @param lowestFailed on the fitted scale
 * @param range of the levels, of which a fiftieth stands for nought
 */
export function resolutionOf(highestSurvived: number, lowestFailed: number, range: number): number {
  const gap = lowestFailed - highestSurvived;
  const told = gap > 0 ? gap : -gap / 4;
  return Number.isFinite(told) ? Math.max(told, range / 50) : range / 4;
}

function shared({ law, share }: ExperimentBase): Pick<Experiment, 'law' | 'share'> {
  return { law, share };
}

function risingEnergies(heights: readonly number[], { energyAt }: ExperimentBase): Float64Array | null {
  const energies = Float64Array.from(heights, energyAt);
  const isRising = energies.every((value, i) => i === 0 || value > energies[i - 1]!);
  return energies.length > 1 && isRising ? energies : null;
}

function meanStep(levels: Float64Array): number {
  return (levels.at(-1)! - levels[0]!) / (levels.length - 1);
}
