import { normal } from '../statistics/laws/normal.ts';
import { normalCritical } from '../statistics/likelihood/critical.ts';
import { fitLocation } from '../statistics/likelihood/fit-location.ts';
import { toleranceFactor } from '../statistics/tolerance/tolerance-factor.ts';
import { spreadBiasFactor } from '../statistics/tolerance/up-and-down-limit.ts';
import { type CountEstimate, countUpAndDown } from '../statistics/up-and-down/count.ts';
import type { Grid, LevelDrop } from '../statistics/up-and-down/grid.ts';
import { meanOfLevels } from '../statistics/up-and-down/mean-of-levels.ts';
import { once } from './alike.ts';
import type { Estimator, IntervalTally, SimulatedTest } from './estimator.ts';

/** What the count formula needs of a design that it applies to. */
export interface CountedDesign {
  /** On the scale of the law: J, or ln J. */
  readonly grid: Grid;
  readonly distribution: 'normal' | 'lognormal';
  /** Whether the tyres follow that law, so that its spread is theirs. */
  readonly isTrueLaw: boolean;
  readonly confidence: number;
}

const METHOD = 'up-and-down-count';

/**
 * Median and spread by the count formula, with Wald intervals; the classical lower limit m − k·s of the 10 % point, k the
 * tolerance factor of as many values read singly as there are drops; the corrected spread, the mean of levels and the
 * small-sample median. A test whose path a limit of the rig has held up has none of them.
 */
export function countEstimators(design: CountedDesign): Estimator[] {
  const { distribution, isTrueLaw, confidence } = design;
  const counting = counter(design.grid);
  const z = normalCritical(confidence, 2);
  const wald = { level: confidence, sides: 2, method: 'wald' } as const;
  const back = distribution === 'lognormal' ? Math.exp : (y: number) => y;
  const onScale = distribution === 'lognormal' ? Math.log : (x: number) => x;
  const factor = factors(confidence);
  const median: Estimator = {
    quantity: 'medianFailureEnergy',
    method: METHOD,
    unit: 'J',
    intervals: [wald],
    errorOf(test, [interval]) {
      const count = counting(test);
      if (count === null) return without(interval);
      const off = count.mean - onScale(test.truth.median);
      if (interval && Math.abs(off) <= z * count.meanError) interval.held += 1;
      return back(count.mean) - test.truth.median;
    },
  };
  const spread: Estimator = {
    quantity: 'energySpread',
    method: METHOD,
    unit: distribution === 'normal' ? 'J' : '1',
    intervals: [wald],
    errorOf(test, [interval]) {
      const count = counting(test);
      if (count === null || !isTrueLaw) return without(interval);
      const off = count.spread - test.truth.spread;
      if (interval && count.spreadError === null) interval.absent += 1;
      else if (interval && Math.abs(off) <= z * count.spreadError!) interval.held += 1;
      return off;
    },
  };
  const tail: Estimator = {
    quantity: 'failureEnergyQuantile',
    probability: 0.1,
    method: METHOD,
    unit: 'J',
    intervals: [{ level: confidence, sides: 1, method: 'tolerance-factor' }],
    errorOf(test, [bound]) {
      const count = counting(test);
      if (count === null || test.trials.size < 2) return without(bound);
      const target = test.truth.quantile(0.1);
      if (bound && count.mean - factor(test.trials.size) * count.spread <= onScale(target)) bound.held += 1;
      return back(count.mean + normal.quantile(0.1) * count.spread) - target;
    },
  };
  return [median, spread, correctedSpread(), tail, meanEstimator(design, back), smallSample()];

  /** The spread by count times n/(n − 3), where the count tells it. */
  function correctedSpread(): Estimator {
    return {
      quantity: 'energySpread',
      method: 'bias-corrected-spread',
      unit: distribution === 'normal' ? 'J' : '1',
      intervals: [],
      errorOf(test) {
        const count = counting(test);
        const n = test.trials.size;
        if (count === null || !isTrueLaw || count.spreadBy === 'constant' || n <= 3) return Number.NaN;
        return count.spread * spreadBiasFactor(n) - test.truth.spread;
      },
    };
  }

  /** The median with the spread taken to be the step (Dixon 1965). */
  function smallSample(): Estimator {
    const found = once(({ sample }) => fitLocation(sample, normal, design.grid.step));
    return {
      quantity: 'medianFailureEnergy',
      method: 'small-sample',
      unit: 'J',
      intervals: [wald],
      errorOf(test, [interval]) {
        const fit = isPathKept(test.trials) ? found(test.basis) : null;
        if (fit === null) return without(interval);
        const off = fit.location - onScale(test.truth.median);
        if (interval && Math.abs(off) <= z * fit.standardError) interval.held += 1;
        return back(fit.location) - test.truth.median;
      },
    };
  }
}

/** The mean of the levels of drops 2 to n + 1. */
function meanEstimator({ grid }: CountedDesign, back: (y: number) => number): Estimator {
  const numbers: number[] = [];
  return {
    quantity: 'medianFailureEnergy',
    method: 'mean-of-levels',
    unit: 'J',
    intervals: [],
    errorOf({ trials, levels, truth }) {
      numbers.length = 0;
      for (let i = 0; i < trials.size; i++) numbers.push(levels.y[trials.level[i]!]!);
      if (!isPathKept(trials)) return Number.NaN;
      const next = numbers.at(-1)! + (trials.failed[trials.size - 1] ? -grid.step : grid.step);
      return back(meanOfLevels(numbers, next)) - truth.median;
    },
  };
}

function without(interval: IntervalTally | undefined): number {
  if (interval) interval.absent += 1;
  return Number.NaN;
}

/** Counts tests of one table once, however many estimators ask. */
function counter(grid: Grid): (test: SimulatedTest) => CountEstimate | null {
  const count = once(({ sample: { size, lower, upper, count: counts } }) => {
    const drops: LevelDrop[] = [];
    for (let i = 0; i < size; i++) {
      const failed = lower[i] === -Infinity;
      const level = Math.round(((failed ? upper[i]! : lower[i]!) - grid.origin) / grid.step);
      for (let k = 0; k < counts[i]!; k++) drops.push({ level, failed });
    }
    return countUpAndDown(drops, grid);
  });
  return ({ trials, basis }) => (isPathKept(trials) ? count(basis) : null);
}

/** Whether every drop moved: a limit of the rig holds a series where it is. */
function isPathKept({ size, level }: SimulatedTest['trials']): boolean {
  for (let i = 1; i < size; i++) if (level[i] === level[i - 1]) return false;
  return true;
}

function factors(confidence: number): (drops: number) => number {
  const known = new Map<number, number>();
  return (drops) => {
    let factor = known.get(drops);
    if (factor === undefined) {
      factor = toleranceFactor(0.9, confidence, drops);
      known.set(drops, factor);
    }
    return factor;
  };
}
