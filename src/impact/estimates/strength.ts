import type { LawName } from '../../statistics/law.ts';
import { laws } from '../../statistics/laws/laws.ts';
import { type ProfileBasis, prepareProfile } from '../../statistics/likelihood/constrained.ts';
import { likelihoodRatioCritical } from '../../statistics/likelihood/critical.ts';
import type { Fit } from '../../statistics/likelihood/fit.ts';
import { gatherObservations, type Observation } from '../../statistics/likelihood/observation.ts';
import { type ProfileInterval, profileQuantile } from '../../statistics/likelihood/profile.ts';
import { profileScale } from '../../statistics/likelihood/profile-scale.ts';
import { type Estimated, estimateQuantile, estimateScale } from '../../statistics/likelihood/quantile.ts';
import { noEstimateSentence } from './no-estimate.ts';

/** A quantity of the strength law, ready to be printed or judged; null where the data give none. */
export interface StrengthEstimate {
  readonly value: number | null;
  readonly standardError: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  /** Why there is no value; null where there is one. */
  readonly why: string | null;
}

/** The strength law that a set of outcomes supports: one fit, asked for as many quantities as are wanted. */
export interface StrengthFit {
  readonly distribution: LawName;
  /** Energy in J below which a share fails, with two-sided limits or one-sided bounds at a confidence. */
  quantile(probability: number, confidence: number, sides: 1 | 2): StrengthEstimate;
  /** The scale parameter: J for normal and logistic, of ln E for lognormal and Weibull. */
  spread(confidence: number, sides: 1 | 2): StrengthEstimate;
}

/**
 * Fits the censored likelihood to failure energies in J. Whether there is an estimate is decided from the data; where
 * there is none, the profile likelihood still gives an interval, unbounded on one side or both if the data say so.
 */
export function fitStrength(observations: readonly Observation[], distribution: LawName): StrengthFit {
  const law = laws[distribution];
  const basis = prepareProfile(gatherObservations(observations, law.scale), law.standard);
  const fit = basis.fit.kind === 'exists' ? basis.fit : null;
  const why = basis.fit.kind === 'exists' ? null : noEstimateSentence(basis.fit, 'J');
  const read = (of: (fit: Fit) => Estimated, interval: ProfileInterval): StrengthEstimate => ({
    value: fit && of(fit).value,
    standardError: fit && of(fit).standardError,
    lower: interval.lower.value,
    upper: interval.upper.value,
    why,
  });
  const profile = (
    of: (basis: ProfileBasis, critical: number) => ProfileInterval,
    level: number,
    sides: 1 | 2,
  ) => of(basis, likelihoodRatioCritical(level, sides));
  return {
    distribution,
    quantile: (probability, confidence, sides) =>
      read(
        (found) => estimateQuantile(found, law, probability),
        profile((on, critical) => profileQuantile(on, probability, critical), confidence, sides),
      ),
    spread: (confidence, sides) => read(estimateScale, profile(profileScale, confidence, sides)),
  };
}
