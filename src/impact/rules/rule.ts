/** A valid drop as a rule sees it. */
export interface Trial {
  /** mm above first contact, as it was. */
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
      /** mm. */
      readonly height: number;
      readonly specimen: 'new' | 'same' | 'any';
      /** One sentence for the person at the rig; rules build it when it is read, since most callers never do. */
      readonly why: string;
    }
  | { readonly decision: 'stop'; readonly why: string };

/**
 * A test method as a pure fold over the valid drops of a series. Checking a log, advising the next drop,
 * simulating and planning are this one rule asked in four ways. Each step takes constant time.
 */
export interface MethodRule<State> {
  readonly start: State;
  step(state: State, trial: Trial): State;
  advice(state: State): Advice;
}
