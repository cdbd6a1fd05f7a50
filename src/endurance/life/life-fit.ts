import { significant } from '../../quantity/format.ts';
import type { LawName } from '../../statistics/law.ts';
import { laws } from '../../statistics/laws/laws.ts';
import { CHARACTERISTIC_SHARE, weibullShape } from '../../statistics/life/weibull.ts';
import { prepareProfile } from '../../statistics/likelihood/constrained.ts';
import { likelihoodRatioCritical } from '../../statistics/likelihood/critical.ts';
import type { NoEstimate } from '../../statistics/likelihood/existence.ts';
import type { Fit } from '../../statistics/likelihood/fit.ts';
import { gatherObservations, type Observation } from '../../statistics/likelihood/observation.ts';
import {
  type ProfileInterval,
  profileFailure,
  profileQuantile,
} from '../../statistics/likelihood/profile.ts';
import { profileScale } from '../../statistics/likelihood/profile-scale.ts';
import {
  type Estimated,
  estimateFailure,
  estimateQuantile,
  estimateScale,
} from '../../statistics/likelihood/quantile.ts';

/** A quantity of the law of life with its limits; null ends are unbounded, a null value has none. */
export interface LifeEstimate {
  readonly value: number | null;
  readonly standardError: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  /** Why there is no value; null where there is one. */
  readonly why: string | null;
}

/** The law that a set of lives supports: one fit, asked for as many quantities as are wanted. */
export interface LifeFit {
  readonly distribution: LawName;
  readonly exists: boolean;
  /** km by which a share has failed. */
  quantile(share: number, confidence: number, sides: 1 | 2): LifeEstimate;
  /** km by which 63.2 % have failed: of a Weibull law its scale. */
  characteristic(confidence: number, sides: 1 | 2): LifeEstimate;
  /** Of a Weibull law; of any other there is none. */
  shape(confidence: number, sides: 1 | 2): LifeEstimate;
  /** Share that lasts beyond a distance in km. */
  reliability(at: number, confidence: number, sides: 1 | 2): LifeEstimate;
  /** Scale parameter: km for normal and logistic, of ln km for lognormal and Weibull. */
  spread(confidence: number, sides: 1 | 2): LifeEstimate;
}

/** Fits the censored likelihood to lives in km, with profile-likelihood limits of every quantity. */
export function fitLife(lives: readonly Observation[], distribution: LawName): LifeFit {
  const law = laws[distribution];
  const basis = prepareProfile(gatherObservations(lives, law.scale), law.standard);
  const fit = basis.fit.kind === 'exists' ? basis.fit : null;
  const why = basis.fit.kind === 'exists' ? null : noLifeSentence(basis.fit);
  const found = (of: (fit: Fit) => Estimated, { lower, upper }: ProfileInterval): LifeEstimate => ({
    value: fit && of(fit).value,
    standardError: fit && of(fit).standardError,
    lower: lower.value,
    upper: upper.value,
    why,
  });
  const quantile: LifeFit['quantile'] = (share, confidence, sides) =>
    found(
      (fitted) => estimateQuantile(fitted, law, share),
      profileQuantile(basis, share, likelihoodRatioCritical(confidence, sides)),
    );
  return {
    distribution,
    exists: fit !== null,
    quantile,
    characteristic: (confidence, sides) => quantile(CHARACTERISTIC_SHARE, confidence, sides),
    shape: (confidence, sides) => {
      if (distribution !== 'weibull')
        return { ...NOTHING, why: `a ${distribution} law has no Weibull shape` };
      const { lower, upper } = profileScale(basis, likelihoodRatioCritical(confidence, sides));
      // The shape is 1/scale, so its ends change places; a scale of nought leaves it without an upper end.
      const turned = {
        lower: { ...upper, value: inverse(upper.value) },
        upper: { ...lower, value: inverse(lower.value) },
      };
      return found(weibullShape, turned);
    },
    reliability: (at, confidence, sides) => {
      const { reliability } = profileFailure(basis, at, likelihoodRatioCritical(confidence, sides));
      const value = (fitted: Fit): Estimated => {
        const { reliability: share, standardError } = estimateFailure(fitted, law, at);
        return { value: share, standardError };
      };
      return found(value, reliability);
    },
    spread: (confidence, sides) =>
      found(estimateScale, profileScale(basis, likelihoodRatioCritical(confidence, sides))),
  };
}

const NOTHING: LifeEstimate = { value: null, standardError: null, lower: null, upper: null, why: null };

function inverse(value: number | null): number | null {
  return value === null || value === 0 ? null : 1 / value;
}

/** Why the likelihood has no single best life and scatter, and what would help. */
export function noLifeSentence(none: NoEstimate): string {
  const at = (level: number) => `${significant(level, 4)} km`;
  switch (none.kind) {
    case 'empty':
      return 'no outcome says anything of a life, so there is nothing to estimate from';
    case 'no-failure':
      return `no tyre failed, up to ${at(none.highestSurvived)}: only lower bounds; run on`;
    case 'all-failed':
      return `every tyre failed before it was first looked at, down to ${at(none.lowestFailed)}: only upper bounds; look sooner`;
    case 'single-level':
    case 'common-level':
      return `failures and survivals meet at ${at(none.level)} only (${none.failed} of ${none.total} failed there), so the scatter of lives has no best value; look at other distances too`;
    case 'gap':
      return `one life between ${at(none.highestSurvived)} and ${at(none.lowestFailed)} explains every tyre, so any scatter down to none fits; failures further apart, or looks closer together, would settle it`;
    case 'single-value':
      return `all lives were read as ${at(none.value)}, so there is no scatter to estimate`;
    case 'wrong-direction':
      return `failures lie on average at no longer distances (${at(none.meanFailed)}) than survivals (${at(none.meanSurvived)}), so no scatter fits; look for a mix-up of columns`;
  }
}
