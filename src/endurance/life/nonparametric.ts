import type { EnduranceEstimate, SurvivalEntry } from '../../result/endurance.ts';
import { adjustedRanks } from '../../statistics/life/adjusted-ranks.ts';
import { medianRank } from '../../statistics/life/median-ranks.ts';
import { normalCritical } from '../../statistics/likelihood/critical.ts';
import { kaplanMeier, survivalLimits } from '../../statistics/turnbull/kaplan-meier.ts';
import { type Turnbull, turnbull, turnbullQuantile } from '../../statistics/turnbull/turnbull.ts';
import type { LifeBasis } from './life-estimates.ts';
import type { TyreLife } from './lives.ts';

/** Whether every failure was seen as it happened: then the product-limit estimate holds. */
function areExact(lives: readonly TyreLife[]): boolean {
  return lives.every(({ lower, upper, failed }) => !failed || lower === upper);
}

/** The law-free curve: product-limit where failures were seen as they happened, else Turnbull's. */
export function survivalCurve(lives: readonly TyreLife[]): readonly SurvivalEntry[] {
  if (!lives.some(({ failed }) => failed)) return [];
  if (areExact(lives)) {
    return kaplanMeier(timesOf(lives)).map(({ time, survival, standardError }) => ({
      from: time,
      to: time,
      survival,
      standardError,
    }));
  }
  return turnbullOf(lives).masses.map(({ lower, upper, cumulative }) => ({
    from: Math.max(0, lower),
    to: Number.isFinite(upper) ? upper : null,
    survival: Math.max(0, 1 - cumulative),
    standardError: null,
  }));
}

/** Law-free entries beside those of the law: lives by share, and reliabilities with Greenwood's error. */
export function nonparametricEstimates({
  lives,
  shares,
  distances,
  confidence,
}: LifeBasis): EnduranceEstimate[] {
  if (!lives.some(({ failed }) => failed)) return [];
  const size = { specimens: lives.length, drops: 0 } as const;
  const estimate = turnbullOf(lives);
  const all = [...new Set([0.1, 0.5, ...shares])].sort((a, b) => a - b);
  const quantiles = all.map((probability): EnduranceEstimate => {
    const { lower, upper } = turnbullQuantile(estimate, probability);
    const isPoint = lower === upper;
    const why = Number.isFinite(upper)
      ? isPoint
        ? 'law-free, without an interval of its own'
        : `law-free: between ${Math.max(0, lower)} and ${upper} km, the looks do not say where`
      : 'law-free: so large a share did not fail';
    const value = isPoint && Number.isFinite(upper) ? upper : null;
    return {
      quantity: 'lifeQuantile',
      probability,
      method: 'nonparametric',
      unit: 'km',
      value,
      standardError: null,
      interval: null,
      ...size,
      why,
    };
  });
  return [
    ...quantiles,
    ...(areExact(lives) ? distances.map((at) => reliabilityAt(lives, at, confidence)) : []),
  ];
}

function reliabilityAt(lives: readonly TyreLife[], at: number, confidence: number): EnduranceEstimate {
  const step = kaplanMeier(timesOf(lives)).findLast(({ time }) => time <= at);
  const longest = lives.reduce((most, { lower }) => Math.max(most, lower), 0);
  const base = {
    quantity: 'reliability',
    method: 'nonparametric',
    at,
    unit: '1',
    specimens: lives.length,
    drops: 0,
  } as const;
  if (at > longest) {
    return {
      ...base,
      value: null,
      standardError: null,
      interval: null,
      why: `no tyre ran so far: the longest ran ${longest} km`,
    };
  }
  if (step === undefined) {
    return {
      ...base,
      value: 1,
      standardError: null,
      interval: null,
      why: 'none failed by then; without an interval of its own',
    };
  }
  const limits = survivalLimits(step, normalCritical(confidence, 2));
  const interval = limits && ({ level: confidence, sides: 2, ...limits, method: 'greenwood-log' } as const);
  return { ...base, value: step.survival, standardError: step.standardError, interval, why: null };
}

/**
 * Where each failure stands on probability paper: median ranks, adjusted for suspensions (Johnson 1964), by specimen. An
 * interval has no place in the order, so they are given only where failures were seen as they happened.
 */
export function medianRanks(lives: readonly TyreLife[]): ReadonlyMap<string, number> {
  if (!areExact(lives)) return new Map();
  const failed = lives.filter((life) => life.failed).toSorted((a, b) => a.upper - b.upper);
  return new Map(
    adjustedRanks(timesOf(lives)).map(({ rank }, i) => [failed[i]!.specimen, medianRank(rank, lives.length)]),
  );
}

function timesOf(lives: readonly TyreLife[]) {
  return lives.map(({ lower, failed }) => ({ time: lower, failed }));
}

function turnbullOf(lives: readonly TyreLife[]): Turnbull {
  return turnbull(lives);
}
