import type { Strength } from './draw.ts';

/** Which critical value is asked for. */
export interface CriticalQuestion {
  /** Share failed whose quantile is held to lie at y (fitted scale), and the strength that goes with it. */
  readonly p: number;
  readonly y: number;
  readonly strength: Strength;
  readonly level: number;
  /**
   * Two-sided: of the root of the likelihood ratio. `above` and `below`: of its signed root, where the observed quantile
   * lies above or below y; these make lower and upper one-sided bounds.
   */
  readonly tail: Tail;
}

export type Tail = 'both' | 'above' | 'below';

/** Critical values of the root of a likelihood ratio, for one test as it was made; ∞ where nothing is rejected. */
export type CriticalValues = (question: CriticalQuestion) => number;
