import type { StandardLaw } from '../laws/standard-law.ts';
import { type Ends, findEnds, type NoEstimate } from './existence.ts';
import { type Fit, fitLocationScale } from './fit.ts';
import { constantSupremum, thresholdAt, thresholdSupremum } from './limits.ts';
import { maximiseConcave } from './maximise.ts';
import type { Sample } from './observation.ts';
import { emptyTerm, sumTerms } from './term.ts';

/** A sample with what every profile over it needs. */
export interface ProfileBasis {
  readonly sample: Sample;
  readonly law: StandardLaw;
  readonly ends: Ends;
  readonly fit: Fit | NoEstimate;
  /** The supremum of the log-likelihood over all locations and scales, both limits of the scale included. */
  readonly supremum: number;
  /** A length on the fitted scale from which searches set out: the range of the levels, or what stands in for it. */
  readonly unit: number;
}

/** Fits a sample, or finds the supremum of its likelihood where there is no best fit, ready for profiles. */
export function prepareProfile(sample: Sample, law: StandardLaw): ProfileBasis {
  const ends = findEnds(sample);
  const fit = fitLocationScale(sample, law);
  const supremum =
    fit.kind === 'exists'
      ? fit.logLikelihood - sample.logJacobian
      : Math.max(
          constantSupremum(ends, law, -Infinity, Infinity),
          thresholdSupremum(sample, ends, law, -Infinity, Infinity),
        );
  const range = ends.highest - ends.lowest;
  return {
    sample,
    law,
    ends,
    fit,
    supremum,
    unit: range > 0 ? range : Math.max(1, Math.abs(ends.highest)) * 0.1,
  };
}

/** The best log-likelihood under a constraint, and the 1/scale where it is reached: 0 and ∞ are the limits. */
export interface Constrained {
  readonly value: number;
  readonly steepness: number;
}

const term = emptyTerm();

/**
 * The supremum of the log-likelihood over all scales with F((y − location)/scale) = F(z) at y: the profile of a quantile
 * (z fixed, y tried) and of a failure probability (y fixed, z tried).
 *
 * With the levels taken from y the predictor is z, and the log-likelihood is concave in b = 1/scale alone. b = 0 is best
 * where its slope there is not positive; b = ∞ where y is a threshold that fits every observation.
 *
 * @param start b to begin with, such as that of a neighbouring y
 */
export function maximiseThrough(basis: ProfileBasis, y: number, z: number, start: number): Constrained {
  const { sample, law, ends } = basis;
  const threshold = thresholdAt(sample, ends, law, y, z);
  if (threshold !== -Infinity) return { value: threshold, steepness: Infinity };
  if (ends.closed === 0) {
    sumTerms(sample, law, y, z, 0, term);
    if (term.steepness <= 0) return { value: term.value, steepness: 0 };
  }
  const best = maximiseConcave(
    (b, into) => {
      sumTerms(sample, law, y, z, b, term);
      into.value = term.value;
      into.slope = term.steepness;
      into.curvature = term.steepness2;
    },
    start,
    0,
    7 * start,
  );
  // Beyond the range of numbers nothing fits.
  return { value: Number.isNaN(best.value) ? -Infinity : best.value, steepness: best.at };
}
