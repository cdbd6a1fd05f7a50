import type { StandardLaw } from '../laws/standard-law.ts';

/** The drops of one simulated test, in order; arrays as long as `size` or longer, refilled by each test. */
export interface Trials {
  size: number;
  /** Index into the levels of the experiment. */
  readonly level: Int32Array;
  readonly failed: Uint8Array;
  /** Numbered from 0. */
  readonly specimen: Int32Array;
}

export function emptyTrials(most: number): Trials {
  return {
    size: 0,
    level: new Int32Array(most),
    failed: new Uint8Array(most),
    specimen: new Int32Array(most),
  };
}

/** A test as its protocol's rule would carry it out again on other specimens. */
export interface Experiment {
  readonly law: StandardLaw;
  /** All levels that the rule can reach, on the fitted scale (x or ln x), ascending. */
  readonly levels: Float64Array;
  /** The distance of neighbouring levels near the start, on the fitted scale. */
  readonly step: number;
  /** Most drops and most specimens of one test. */
  readonly mostDrops: number;
  readonly mostSpecimens: number;
  /**
   * What one observation is: each hit by itself, or a rise, where a specimen keeps one threshold and is known to lie
   * between the last level survived and the one that failed it.
   */
  readonly reading: 'hits' | 'rises';
  /** Share of the variance of strength that lies between specimens; 0 where each is hit once. Not used by rises. */
  readonly share: number;
  /** Whether the next level depends on the outcomes before it, on whatever specimen. */
  readonly isSequential: boolean;
  /** Carries out one test: asks for the outcome of each drop in turn and writes it down. */
  walk(fails: (level: number, specimen: number) => boolean, into: Trials): void;
}
