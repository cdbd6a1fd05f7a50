import { mean, variance } from '../summary/moments.ts';

/** A pooled standard deviation with its degrees of freedom. */
export interface Pooled {
  readonly standardDeviation: number;
  readonly degrees: number;
}

/** Standard deviations from different batches as one: √(Σ ν s²/Σ ν). */
export function poolDeviations(parts: readonly Pooled[]): Pooled {
  const degrees = parts.reduce((sum, part) => sum + part.degrees, 0);
  const squares = parts.reduce((sum, part) => sum + part.degrees * part.standardDeviation ** 2, 0);
  if (!(degrees > 0)) throw new RangeError('no degrees of freedom to pool');
  return { standardDeviation: Math.sqrt(squares / degrees), degrees };
}

/** Readings of one item: for each run, for each day, the mean of the repeats and their standard deviation. */
export type ItemRuns = readonly (readonly { readonly mean: number; readonly shortTerm: number }[])[];

/** The three levels of variability of a gauge that is watched over months. */
export interface GaugeLevels {
  /** From repeat to repeat. */
  readonly levelOne: Pooled;
  /** Of the daily means within a run. */
  readonly levelTwo: Pooled;
  /** Of the means of runs. */
  readonly levelThree: Pooled;
  /** Standard deviation of the means of runs, item by item. */
  readonly ofRuns: readonly number[];
  /** s₂² − s₁²/repeats and s₃² − s₂²/days: of days and runs by themselves, negative as they come out. */
  readonly daysVariance: number;
  readonly runsVariance: number;
}

/**
 * Levels 1, 2 and 3 of a nested study (NIST/SEMATECH e-Handbook 2.4.3), pooled over items.
 *
 * @param repeats behind each daily mean; the standard deviations have one fewer degrees of freedom
 * @throws RangeError unless every item has two runs or more and every run two days or more
 */
export function gaugeLevels(items: readonly ItemRuns[], repeats: number): GaugeLevels {
  const runs = items.flat();
  if (items.some((item) => item.length < 2) || runs.some((days) => days.length < 2))
    throw new RangeError('each item needs two runs of two days or more');
  const of = (values: readonly number[]): Pooled => ({
    standardDeviation: Math.sqrt(variance(values)),
    degrees: values.length - 1,
  });
  const byItem = items.map((item) => of(item.map((days) => mean(days.map((day) => day.mean)))));
  const levelOne = poolDeviations(
    runs.flat().map((day) => ({ standardDeviation: day.shortTerm, degrees: repeats - 1 })),
  );
  const levelTwo = poolDeviations(runs.map((days) => of(days.map((day) => day.mean))));
  const levelThree = poolDeviations(byItem);
  const days = mean(runs.map((run) => run.length));
  return {
    levelOne,
    levelTwo,
    levelThree,
    ofRuns: byItem.map((one) => one.standardDeviation),
    daysVariance: levelTwo.standardDeviation ** 2 - levelOne.standardDeviation ** 2 / repeats,
    runsVariance: levelThree.standardDeviation ** 2 - levelTwo.standardDeviation ** 2 / days,
  };
}
