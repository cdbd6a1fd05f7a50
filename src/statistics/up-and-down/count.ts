import type { Grid, LevelDrop } from './grid.ts';
import { dixonMoodSpread, fallingMassSpread, meanErrorFactor, spreadErrorFactor } from './spread.ts';

/** The estimate of an up-and-down test by counting the rarer event, on the scale of the grid. */
export interface CountEstimate {
  /** The event that was counted: the rarer one, failures where both are as frequent. */
  readonly event: 'failed' | 'survived';
  /** N, A = Σ i·nᵢ and B = Σ i²·nᵢ over the levels i = 0, 1, … from the lowest where the event occurred. */
  readonly N: number;
  readonly A: number;
  readonly B: number;
  /** (N·B − A²)/N² */
  readonly M: number;
  readonly mean: number;
  readonly spread: number;
  /**
   * How the spread was found: `count` for M above 0.3; `constant` below, where the count does not determine it and
   * fatigue-standard practice puts 0.53 d.
   */
  readonly spreadBy: 'count' | 'constant';
  /** The count formula without its limit, and as falling-mass standards round it. */
  readonly spreadUnchecked: number;
  readonly spreadFallingMass: number;
  /** G·s/√N */
  readonly meanError: number;
  /** H·s/√N; null where the spread is a constant. */
  readonly spreadError: number | null;
}

/** M at or below which the count says nothing of the spread: steps of about 1.9 σ and more. */
const LEAST_M = 0.3;

/**
 * Mean and spread of a normal strength from an up-and-down test: Dixon and Mood (1948), JASA 43, 109–126.
 *
 * m = y′ + d·(A/N ∓ ½), minus for failures, plus for survivals, with y′ the lowest level where the event occurred;
 * s = 1.620·d·(M + 0.029) for M > 0.3, else 0.53·d. A long run of like results before the first change belongs to the
 * more frequent event and drops out by itself. Standard errors by N, about half the drops.
 *
 * It holds where the path was kept (one down after a failure, one up after a survival) on an equally spaced grid; the
 * caller sees to that.
 *
 * @param event count this one instead of the rarer
 * @returns null when the event never occurred
 */
export function countUpAndDown(
  drops: readonly LevelDrop[],
  { origin, step }: Grid,
  event: 'failed' | 'survived' = rarerEvent(drops),
): CountEstimate | null {
  const levels = drops.filter((drop) => drop.failed === (event === 'failed')).map((drop) => drop.level);
  const N = levels.length;
  if (N === 0) return null;
  const lowest = levels.reduce((least, level) => Math.min(least, level));
  const A = levels.reduce((sum, level) => sum + (level - lowest), 0);
  const B = levels.reduce((sum, level) => sum + (level - lowest) ** 2, 0);
  const M = (N * B - A * A) / (N * N);
  const unchecked = dixonMoodSpread(M, step);
  const counted = M > LEAST_M;
  const spread = counted ? unchecked : 0.53 * step;
  return {
    event,
    N,
    A,
    B,
    M,
    mean: origin + step * (lowest + A / N + (event === 'failed' ? -0.5 : 0.5)),
    spread,
    spreadBy: counted ? 'count' : 'constant',
    spreadUnchecked: unchecked,
    spreadFallingMass: fallingMassSpread(M, step),
    meanError: (meanErrorFactor(spread, step) * spread) / Math.sqrt(N),
    spreadError: counted ? (spreadErrorFactor(spread, step) * spread) / Math.sqrt(N) : null,
  };
}

/** The event that occurred less often; failures where both are as frequent. */
export function rarerEvent(drops: readonly LevelDrop[]): 'failed' | 'survived' {
  const failures = drops.filter((drop) => drop.failed).length;
  return 2 * failures <= drops.length ? 'failed' : 'survived';
}
