import type { ImpactProtocol } from '../../documents/kinds.ts';
import { significant } from '../../quantity/format.ts';
import type { Estimate } from '../../result/estimate.ts';
import { type Observations, observe } from '../observations.ts';
import type { Replay } from '../replay/replay.ts';
import { countableDrops } from './countable.ts';
import { type Basis, estimatesFromCount } from './from-count.ts';
import { estimatesFromLikelihood } from './from-likelihood.ts';
import { meanOfNotedHeights } from './noted-heights.ts';
import { fitStrength, type StrengthFit } from './strength.ts';

export interface ImpactEvidence {
  readonly protocol: ImpactProtocol;
  readonly replay: Replay;
  /** J of a drop; null where it has none. */
  readonly energyOf: Parameters<typeof observe>[1];
  /** J for a mm, where one falling mass served all drops and energy goes by height; null otherwise. */
  readonly energyPerHeight: number | null;
  /** Why nothing may be estimated at all, such as a protocol that was broken too far; null as a rule. */
  readonly refused: string | null;
}

/** All estimates of a drop test, and the fit that criteria are judged by; null where nothing may be estimated. */
export interface ImpactEstimates {
  readonly estimates: readonly Estimate[];
  readonly fit: StrengthFit | null;
  readonly observations: Observations;
  /** mm for a joule, where one falling mass served all drops; null otherwise. */
  readonly heightPerEnergy: number | null;
}

/**
 * Estimates what the tyres withstand: the censored likelihood first, then, where its conditions hold, the count
 * formula beside it; where drops were left out without a reason, the likelihood with them taken back.
 *
 * @param probabilities shares failed that a specification asks for.
 */
export function estimateImpact(evidence: ImpactEvidence, probabilities: readonly number[]): ImpactEstimates {
  const { protocol, replay, energyOf, energyPerHeight, refused } = evidence;
  const observations = observe(replay, energyOf);
  const basis = basisOf(protocol, observations);
  const heightPerEnergy = energyPerHeight === null ? null : 1 / energyPerHeight;
  if (refused !== null) {
    const estimates = [{ ...nothing(protocol, basis), why: refused }];
    return { estimates, fit: null, observations, heightPerEnergy };
  }
  const fitted = (of: Observations) => fitStrength(of.observations, protocol.distribution);
  const fit = fitted(observations);
  const remark = bindingRemark(protocol, observations);
  const likelihood = estimatesFromLikelihood(fit, basis, probabilities, heightPerEnergy).map((estimate) => ({
    ...estimate,
    why: estimate.why ?? remark,
  }));
  const estimates = [...likelihood, ...besideLikelihood(evidence, observations, basis)];
  if (replay.counts.unexplained > 0) {
    const variant = 'with-unexplained-exclusions';
    const all = observe(replay, energyOf, variant);
    const again = estimatesFromLikelihood(fitted(all), basisOf(protocol, all), [], heightPerEnergy);
    estimates.push(...again.map((estimate) => ({ ...estimate, variant })));
  }
  return { estimates, fit, observations, heightPerEnergy };
}

function besideLikelihood(evidence: ImpactEvidence, observations: Observations, basis: Basis): Estimate[] {
  const { protocol, replay, energyPerHeight } = evidence;
  switch (protocol.method) {
    case 'up-and-down':
      return estimatesFromCount(
        countableDrops(protocol, replay, energyPerHeight),
        protocol.distribution,
        basis,
      );
    case 'rising-height':
      return meanOfNotedHeights(observations, basis);
    default:
      return [];
  }
}

function basisOf({ confidence }: ImpactProtocol, { specimens, drops }: Observations): Basis {
  return { confidence, specimens, drops };
}

function nothing({ distribution }: ImpactProtocol, { specimens, drops }: Basis): Estimate {
  return {
    quantity: 'medianFailureEnergy',
    method: 'censored-likelihood',
    distribution,
    unit: 'J',
    value: null,
    standardError: null,
    interval: null,
    specimens,
    drops,
    why: null,
  };
}

/** What a number must not be taken for, where its protocol binds it. */
function bindingRemark({ method, start, step }: ImpactProtocol, observations: Observations): string | null {
  if (method === 'rising-height' && start !== null && step !== null) {
    const by =
      step.kind === 'additive' ? `${significant(step.size, 3)} mm` : `${significant(100 * step.ratio, 3)} %`;
    return `bound to its protocol: hits from ${significant(start, 4)} mm in steps of ${by} on one tyre, each tyre taken to have one fixed strength`;
  }
  if (observations.mostDrops > 1) {
    return `${observations.drops} drops on ${observations.specimens} specimens are repeat looks at them, taken as independent here: the interval is too narrow (of nominal 95 % intervals some 75 to 88 % hold where half or more of the variance lies between tyres)`;
  }
  return null;
}
