import type { Estimate } from '../../result/estimate.ts';
import { normal } from '../../statistics/laws/normal.ts';
import { normalCritical } from '../../statistics/likelihood/critical.ts';
import { toleranceFactor } from '../../statistics/tolerance/tolerance-factor.ts';
import { classicalLimitCaveat, spreadBiasFactor } from '../../statistics/tolerance/up-and-down-limit.ts';
import { type CountEstimate, countUpAndDown } from '../../statistics/up-and-down/count.ts';
import type { Grid, LevelDrop } from '../../statistics/up-and-down/grid.ts';
import { meanOfLevels } from '../../statistics/up-and-down/mean-of-levels.ts';
import { smallSampleMedian } from '../../statistics/up-and-down/small-sample.ts';
import type { CountableDrops } from '../estimates/from-count.ts';
import { entryOf, type LevelEvidence } from './evidence.ts';

type Kept = Extract<CountableDrops, { applies: true }>;

/**
 * Mean of the levels of drops 2 to n + 1 (Brownlee, Hodges and Rosenblatt 1953). It has no standard error of its own in
 * use; in simulations it scatters like the mean by count (SEN-11).
 */
export function meanOfLevelsEstimate(evidence: LevelEvidence): Estimate[] {
  return onGrid(evidence, 'mean-of-levels', 'medianFailureEnergy', (kept) => {
    const levels = kept.drops.map(({ level }) => place(kept.grid, level));
    const last = kept.drops.at(-1)!;
    const mean = meanOfLevels(levels, place(kept.grid, last.level + (last.failed ? -1 : 1)));
    const why =
      'no standard error of its own: it scatters like the mean by count; levels passed before the first change of outcome are in it and draw it towards the start';
    return { value: onEnergy(evidence, mean), why };
  });
}

/** The median of a short series with the spread taken to be the step: Dixon's table (1965), computed. */
export function smallSampleEstimate(evidence: LevelEvidence): Estimate[] {
  return onGrid(evidence, 'small-sample', 'medianFailureEnergy', (kept) => {
    const fit = smallSampleMedian(kept.drops, kept.grid);
    if (fit === null) return { why: 'both a failure and a survival are needed' };
    const half = normalCritical(evidence.confidence, 2) * fit.standardError;
    const value = onEnergy(evidence, fit.location);
    return {
      value,
      standardError: evidence.law.scale === 'log' ? value * fit.standardError : fit.standardError,
      interval: {
        level: evidence.confidence,
        sides: 2,
        lower: onEnergy(evidence, fit.location - half),
        upper: onEnergy(evidence, fit.location + half),
        method: 'wald',
      },
      why: 'the spread is taken to be the step: its error is that of the median only if this is about right',
    };
  });
}

/** The spread by count times n/(n − 3), as fatigue standards correct it (Svensson and Lorén, from memory). */
export function biasCorrectedSpread(evidence: LevelEvidence): Estimate[] {
  return onGrid(evidence, 'bias-corrected-spread', 'energySpread', (kept) => {
    const counted = correctable(kept);
    if (typeof counted === 'string') return { why: counted };
    const n = kept.drops.length;
    const why = `the spread by count times n/(n − 3) = ${spreadBiasFactor(n).toFixed(3)}: mends most of its bias where the step is about one spread, not at half a spread`;
    return { value: counted.spread * spreadBiasFactor(n), why };
  });
}

/** The share failed that the classical lower limit speaks of. */
const TAIL = 0.1;

/**
 * The classical lower limit of the 10 % point, mean − k·spread with the one-sided tolerance factor of n − 1 degrees of
 * freedom and the corrected spread, with the sentence how often such a limit really holds.
 */
export function toleranceFactorLimit(evidence: LevelEvidence): Estimate[] {
  const head = { probability: TAIL };
  return onGrid(evidence, 'tolerance-factor', 'failureEnergyQuantile', (kept) => {
    const counted = correctable(kept);
    if (typeof counted === 'string') return { ...head, why: counted };
    const n = kept.drops.length;
    const spread = counted.spread * spreadBiasFactor(n);
    const k = toleranceFactor(1 - TAIL, evidence.confidence, n);
    const coverage =
      evidence.confidence === 0.95
        ? classicalLimitCaveat(n, true)
        : 'such limits hold less often than they say, as was measured for 95 %: the spread of an up-and-down test is known far less well than n − 1 degrees of freedom say';
    return {
      ...head,
      value: onEnergy(evidence, counted.mean + normal.quantile(TAIL) * spread),
      interval: {
        level: evidence.confidence,
        sides: 1,
        lower: onEnergy(evidence, counted.mean - k * spread),
        upper: null,
        method: 'tolerance-factor',
      },
      why: coverage,
    };
  }).map((estimate) => ({ ...head, ...estimate }));
}

/** An entry from drops on a kept grid, or the reason why there is none. */
function onGrid(
  evidence: LevelEvidence,
  method: string,
  quantity: string,
  estimate: (kept: Kept) => Partial<Estimate>,
): Estimate[] {
  const { countable, protocol } = evidence;
  const head = entryOf(evidence, method, quantity, { distribution: protocol.distribution });
  if (!countable.applies) return [{ ...head, why: `it does not apply: ${countable.why}` }];
  if (countable.drops.length === 0) return [{ ...head, why: 'there are no drops' }];
  return [{ ...head, ...estimate(countable) }];
}

function correctable(kept: Kept): CountEstimate | string {
  const counted = countUpAndDown(kept.drops, kept.grid);
  if (counted === null) return 'all drops had one outcome, so there is none to count';
  if (kept.drops.length <= 3) return 'the factor n/(n − 3) needs more than 3 drops';
  if (counted.spreadBy === 'constant')
    return 'the count cannot tell a spread as small as this beside the step (M at most 0.3)';
  return counted;
}

function place({ origin, step }: Grid, level: LevelDrop['level']): number {
  return origin + level * step;
}

function onEnergy({ law }: LevelEvidence, y: number): number {
  return law.scale === 'log' ? Math.exp(y) : y;
}
