import type { StandardLaw } from '../laws/standard-law.ts';
import { findEnds } from './existence.ts';
import { maximiseConcave } from './maximise.ts';
import type { Sample } from './observation.ts';
import { emptyTerm, sumTerms } from './term.ts';

/** The best location for a scale that is given. */
export interface LocationFit {
  readonly location: number;
  /** From the observed information of the location alone: the scale counts as known. */
  readonly standardError: number;
  /** Of the fitted scale (exact values: the density of y). */
  readonly logLikelihood: number;
}

const term = emptyTerm();

/**
 * Maximum-likelihood location on the fitted scale with the scale parameter known. Concave in one variable; null when
 * nothing failed or nothing survived, where the location runs off.
 *
 * @param scale above 0
 */
export function fitLocation(sample: Sample, law: StandardLaw, scale: number): LocationFit | null {
  const ends = findEnds(sample);
  if (ends.failed + ends.closed === 0 || ends.survived + ends.closed === 0) return null;
  // The predictor is (origin − location)/scale.
  const origin = 0.5 * (ends.lowest + ends.highest);
  const steepness = 1 / scale;
  const best = maximiseConcave(
    (predictor, into) => {
      sumTerms(sample, law, origin, predictor, steepness, term);
      into.value = term.value;
      into.slope = term.predictor;
      into.curvature = term.predictor2;
    },
    law.quantile(0.5),
    -Infinity,
    1 + steepness * (ends.highest - ends.lowest),
  );
  sumTerms(sample, law, origin, best.at, steepness, term);
  return {
    location: origin - best.at * scale,
    standardError: scale / Math.sqrt(-term.predictor2),
    logLikelihood: best.value,
  };
}
