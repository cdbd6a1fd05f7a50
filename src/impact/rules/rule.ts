/**
 * A valid drop as a rule sees it. A rule knows one number of a drop, its level: the height, or, in a protocol that
 * varies the mass, the falling mass in kg.
 */
export interface Trial {
  /** Level as it was: mm above first contact, or kg. */
  readonly height: number;
  readonly outcome: 'failed' | 'survived';
  readonly specimen: string;
  /** Which valid hit of this specimen in the series it is, from 1: so that a rule need not remember names. */
  readonly hit: number;
}

/** What to do next. */
export type Advice =
  | {
      readonly decision: 'height';
      /** mm, or kg in a rule that varies the mass. */
      readonly height: number;
      readonly specimen: 'new' | 'same' | 'any';
      /** One sentence for the person at the rig; rules build it when it is read, since most callers never do. */
      readonly why: string;
    }
  | { readonly decision: 'stop'; readonly why: string };

/**
 * Advice for a level whose sentence is put together when it is read. A class, since a getter in an object literal costs
 * as much as the rest of a simulated drop.
 */
export class LevelAdvice {
  readonly decision = 'height';
  readonly height: number;
  readonly specimen: 'new' | 'same' | 'any';
  readonly #tell: () => string;

  constructor(height: number, specimen: 'new' | 'same' | 'any', tell: () => string) {
    this.height = height;
    this.specimen = specimen;
    this.#tell = tell;
  }

  get why(): string {
    return this.#tell();
  }
}

/**
 * A test method as a pure fold over the valid drops of a series. Checking a log, advising the next drop,
 * simulating and planning are this one rule asked in four ways. Each step takes constant time.
 */
export interface MethodRule<State> {
  readonly start: State;
  step(state: State, trial: Trial): State;
  advice(state: State): Advice;
}
