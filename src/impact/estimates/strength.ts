import type { LawName } from '../../statistics/law.ts';
import { laws } from '../../statistics/laws/laws.ts';
import { prepareProfile } from '../../statistics/likelihood/constrained.ts';
import { likelihoodRatioCritical } from '../../statistics/likelihood/critical.ts';
import type { Fit } from '../../statistics/likelihood/fit.ts';
import { gatherObservations, type Observation } from '../../statistics/likelihood/observation.ts';
import { type ProfileInterval, profileQuantile } from '../../statistics/likelihood/profile.ts';
import { profileScale } from '../../statistics/likelihood/profile-scale.ts';
import { type Estimated, estimateQuantile, estimateScale } from '../../statistics/likelihood/quantile.ts';
import { calibratedLimits } from './calibrated.ts';
import { noEstimateSentence } from './no-estimate.ts';
import type { RepeatableTest } from './repeatable.ts';

/** A quantity of the strength law, ready to be printed or judged; null where the data give none. */
export interface StrengthEstimate {
  readonly value: number | null;
  readonly standardError: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly interval: 'calibrated' | 'profile-likelihood';
  /** Why there is no value; null where there is one. */
  readonly why: string | null;
}

/** The strength law that a set of outcomes supports: one fit, asked for as many quantities as are wanted. */
export interface StrengthFit {
  readonly distribution: LawName;
  /**
   * Energy in J below which a share fails, with two-sided limits or one-sided bounds at a confidence: calibrated ones
   * where the test can be repeated in simulation, else those of the profile likelihood.
   */
  quantile(probability: number, confidence: number, sides: 1 | 2): StrengthEstimate;
  /** The same by the profile likelihood, whose critical value is that of large samples. */
  profileQuantile(probability: number, confidence: number, sides: 1 | 2): StrengthEstimate;
  /** The scale parameter: J for normal and logistic, of ln E for lognormal and Weibull. */
  spread(confidence: number, sides: 1 | 2): StrengthEstimate;
}

/**
 * Fits the censored likelihood to failure energies in J. Whether there is an estimate is decided from the data; where
 * there is none, the profile likelihood still gives an interval, unbounded on one side or both if the data say so.
 *
 * @param asMade the test in simulation; null for profile intervals only
 */
export function fitStrength(
  observations: readonly Observation[],
  distribution: LawName,
  asMade: RepeatableTest | null = null,
): StrengthFit {
  const law = laws[distribution];
  const basis = prepareProfile(gatherObservations(observations, law.scale), law.standard);
  const fit = basis.fit.kind === 'exists' ? basis.fit : null;
  const why = basis.fit.kind === 'exists' ? null : noEstimateSentence(basis.fit, 'J');
  const value = (of: (fit: Fit) => Estimated) => ({
    value: fit && of(fit).value,
    standardError: fit && of(fit).standardError,
    why,
  });
  const profiled = ({ lower, upper }: ProfileInterval) =>
    ({ lower: lower.value, upper: upper.value, interval: 'profile-likelihood' }) as const;
  const calibrated = asMade && calibratedLimits(basis, asMade);
  const profileAt: StrengthFit['profileQuantile'] = (p, confidence, sides) => ({
    ...value((found) => estimateQuantile(found, law, p)),
    ...profiled(profileQuantile(basis, p, likelihoodRatioCritical(confidence, sides))),
  });
  return {
    distribution,
    profileQuantile: profileAt,
    quantile: (p, confidence, sides) =>
      calibrated === null
        ? profileAt(p, confidence, sides)
        : {
            ...value((found) => estimateQuantile(found, law, p)),
            ...calibrated(p, confidence, sides),
            interval: 'calibrated',
          },
    spread: (confidence, sides) => ({
      ...value(estimateScale),
      ...profiled(profileScale(basis, likelihoodRatioCritical(confidence, sides))),
    }),
  };
}
