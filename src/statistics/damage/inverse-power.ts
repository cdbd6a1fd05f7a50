import { studentLaw } from '../laws/student.ts';
import type { Combined } from '../uncertainty/effective-degrees.ts';
import { minerSum } from './palmgren-miner.ts';

/** A stretch of a schedule: how far, at which load. */
export interface LoadedDistance {
  readonly distance: number;
  /** In any unit, the same as that of the reference. */
  readonly load: number;
}

/** Life under another load by the inverse power law: life·(load/other)^exponent. */
export function lifeAtLoad(life: number, load: number, other: number, exponent: number): number {
  checkLoads([load, other]);
  return life * (load / other) ** exponent;
}

/** Life by Basquin's line N = ½·(amplitude/coefficient)^(1/b), b below 0, in cycles (two reversals each). */
export function basquinLife(amplitude: number, coefficient: number, b: number): number {
  return 0.5 * (amplitude / coefficient) ** (1 / b);
}

/**
 * The distance at the reference load that does as much by Palmgren–Miner and the inverse power law: Σ dᵢ·(loadᵢ/reference)^exponent.
 * The exponent of a tyre is no published constant; and the result is no distance on a road.
 */
export function equivalentDistance(
  stretches: readonly LoadedDistance[],
  reference: number,
  exponent: number,
): number {
  checkLoads([reference]);
  for (const { load } of stretches) if (!(load >= 0)) throw new RangeError(`load ${load} is below 0`);
  return stretches.reduce((sum, { distance, load }) => sum + distance * (load / reference) ** exponent, 0);
}

/** The share of the life that a schedule uses up, from the life at one load: Palmgren–Miner with the inverse power law. */
export function damageOfSchedule(
  stretches: readonly LoadedDistance[],
  known: { readonly life: number; readonly load: number },
  exponent: number,
): number {
  return minerSum(
    stretches.map(({ distance, load }) => ({
      amount: distance,
      life: load === 0 ? Infinity : lifeAtLoad(known.life, known.load, load, exponent),
    })),
  );
}

/** The constant load that does as much over the same distance: (Σ dᵢ·loadᵢ^exponent/Σ dᵢ)^(1/exponent). */
export function equivalentLoad(stretches: readonly LoadedDistance[], exponent: number): number {
  const total = stretches.reduce((sum, { distance }) => sum + distance, 0);
  const largest = Math.max(...stretches.map(({ load }) => load));
  return largest * (equivalentDistance(stretches, largest, exponent) / total) ** (1 / exponent);
}

/** The exponent that two lives at two loads speak of: ln(life₁/life₂)/ln(load₂/load₁). */
export function exponentOfTwo(
  first: { life: number; load: number },
  second: { life: number; load: number },
): number {
  checkLoads([first.load, second.load]);
  if (first.load === second.load) throw new RangeError('one load says nothing of the exponent');
  return Math.log(first.life / second.life) / Math.log(second.load / first.load);
}

/**
 * The equivalent distance with what is not known of the exponent carried through: recomputed at exponent ± t·u, since it bends with
 * the exponent; lower and upper may lie on either side.
 */
export function equivalentDistanceInterval(
  stretches: readonly LoadedDistance[],
  reference: number,
  exponent: { readonly value: number } & Combined,
  level: number,
): {
  readonly value: number;
  readonly standardUncertainty: number;
  readonly lower: number;
  readonly upper: number;
} {
  const at = (p: number) => equivalentDistance(stretches, reference, p);
  const u = exponent.standardUncertainty;
  const half = studentLaw(exponent.degrees).quantileOfSf(0.5 * (1 - level)) * u;
  const ends = [at(exponent.value - half), at(exponent.value + half)];
  const slope = stretches.reduce((sum, { distance, load }) => {
    const ratio = load / reference;
    return ratio > 0 ? sum + distance * ratio ** exponent.value * Math.log(ratio) : sum;
  }, 0);
  return {
    value: at(exponent.value),
    standardUncertainty: Math.abs(slope) * u,
    lower: Math.min(...ends),
    upper: Math.max(...ends),
  };
}

function checkLoads(loads: readonly number[]): void {
  for (const load of loads)
    if (!(load > 0 && load < Infinity)) throw new RangeError(`load ${load} is not above 0`);
}
