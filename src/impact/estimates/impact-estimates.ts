import type { EstimatorName, ImpactProtocol, Rig } from '../../documents/kinds.ts';
import { significant } from '../../quantity/format.ts';
import type { Estimate, IntervalKind } from '../../result/estimate.ts';
import type { Goodness } from '../../result/goodness.ts';
import type { RegressionResult } from '../../result/regression.ts';
import { estimateBy, estimatorsFor } from '../estimators/estimators.ts';
import { type LevelEvidence, levelEvidence } from '../estimators/evidence.ts';
import { goodnessOfFit } from '../estimators/goodness.ts';
import {
  type SingleHitStrength,
  singleHitStrength,
  specimenEffectEstimates,
} from '../estimators/specimen-effect.ts';
import { type Observations, observe } from '../observations.ts';
import { adjustedEstimates, type PlannedConditions } from '../regression/adjust.ts';
import type { ConstructionOf } from '../regression/covariates.ts';
import { regress, withinSample } from '../regression/regress.ts';
import type { ReplayedSample } from '../replay/replay.ts';
import { shareAimedAt } from '../rules/up-and-down.ts';
import type { LevelScale } from './asked-for.ts';
import { countableDrops } from './countable.ts';
import { type Basis, estimatesFromCount } from './from-count.ts';
import { estimatesFromLikelihood } from './from-likelihood.ts';
import { meanOfNotedHeights } from './noted-heights.ts';
import { ASSUMED_SHARE, type Repeatable, repeatable } from './repeatable.ts';
import { fitStrength, type StrengthFit } from './strength.ts';

export interface ImpactEvidence {
  readonly protocol: ImpactProtocol;
  /** Whose limits and resolution simulated tests keep. */
  readonly rig?: Rig | null;
  readonly replay: ReplayedSample;
  /** J of a drop; null where it has none. */
  readonly energyOf: Parameters<typeof observe>[1];
  /** J for a mm (where the mass is varied, for a kg), where one mass served all drops and energy goes by height; else null. */
  readonly energyPerHeight: number | null;
  /** Why nothing may be estimated at all, such as a protocol that was broken too far; null as a rule. */
  readonly refused: string | null;
  /** Estimators asked for beside those of the method and the protocol. */
  readonly asked: readonly EstimatorName[];
  readonly intervals: IntervalKind;
  readonly constructionOf: ConstructionOf;
  readonly planned: PlannedConditions;
}

/** All estimates of a drop test, and the fit that criteria are judged by; null where nothing may be estimated. */
export interface ImpactEstimates {
  readonly estimates: readonly Estimate[];
  readonly fit: StrengthFit | null;
  /** One hit on a fresh tyre, for criteria that ask for it: null where each tyre is hit once, a reason where it cannot be had. */
  readonly singleHit: SingleHitStrength | string | null;
  readonly observations: Observations;
  /** The median as a height or a falling mass; null where no level stands for an energy. */
  readonly level: LevelScale | null;
  /** Null where it is not asked for. */
  readonly goodness: Goodness | null;
  /** Effects of conditions within these drops; null where none but the construction's is asked for. */
  readonly regression: RegressionResult | null;
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
  const level = levelScale(protocol, energyPerHeight);
  if (refused !== null) {
    const estimates = [{ ...nothing(protocol, basis), why: refused }];
    return {
      estimates,
      fit: null,
      singleHit: refused,
      observations,
      level,
      goodness: null,
      regression: null,
    };
  }
  const again: Repeatable =
    evidence.intervals === 'calibrated'
      ? repeatable(protocol, replay, observations, energyOf, evidence.rig ?? null)
      : { kind: 'not-repeatable', why: 'profile intervals alone were asked for' };
  const asMade = again.kind === 'repeatable' ? again : null;
  const fit = fitStrength(observations.observations, protocol.distribution, asMade);
  const remarks = {
    calibrated: bindingRemark(protocol, observations, again),
    beside: bindingRemark(protocol, observations, asMade === null ? again : null),
  };
  const remarkOf = ({ interval }: Estimate) =>
    interval?.method === 'calibrated' ? remarks.calibrated : remarks.beside;
  const aim = protocol.survivalsToRaise === null ? [] : [shareAimedAt(protocol.survivalsToRaise)];
  const shares = [...probabilities, ...aim];
  const likelihood = estimatesFromLikelihood(fit, basis, shares, level).map((estimate) => ({
    ...estimate,
    why: estimate.why ?? (aim.includes(estimate.probability ?? Number.NaN) ? AIM : remarkOf(estimate)),
  }));
  const levels = levelEvidence(
    protocol,
    replay,
    observations,
    countableDrops(protocol, replay, energyPerHeight),
    energyOf,
  );
  const singleHit = singleHitStrength(levels, replay, energyOf);
  const asked = protocol.regression && withinSample(protocol.regression);
  const regressed =
    asked && asked.covariates.length > 0
      ? regress(protocol, asked, observations.observations, evidence.constructionOf)
      : null;
  const estimates = [
    ...likelihood,
    ...besideLikelihood(levels, observations, basis),
    ...specimenEffectEstimates(levels, singleHit),
    ...estimateBy(estimatorsFor(protocol, evidence.asked, likelihood[0]!.value !== null), levels),
    ...(regressed ? adjustedEstimates(protocol, regressed, evidence.planned, observations) : []),
  ];
  const variants = [
    ...(replay.counts.unexplained > 0 ? (['with-unexplained-exclusions'] as const) : []),
    ...(replay.counts.excused > 0 ? (['with-exclusions'] as const) : []),
  ];
  for (const variant of variants) {
    const all = observe(replay, energyOf, variant);
    const again = estimatesFromLikelihood(
      fitStrength(all.observations, protocol.distribution),
      basisOf(protocol, all),
      [],
      level,
    );
    estimates.push(...again.map((estimate) => ({ ...estimate, variant })));
  }
  const goodness = goodnessOfFit(levels, evidence.asked);
  const regression = regressed?.result ?? null;
  return { estimates, fit, singleHit, observations, level, goodness, regression };
}

const AIM = 'the share failed that the rule aims at: 1 − 2^(−1/k) for k survivals in a row';

function besideLikelihood(
  { protocol, countable }: LevelEvidence,
  observations: Observations,
  basis: Basis,
): Estimate[] {
  switch (protocol.method) {
    case 'up-and-down':
      return estimatesFromCount(countable, protocol.distribution, basis);
    case 'rising-height':
      return meanOfNotedHeights(observations, basis);
    default:
      return [];
  }
}

function levelScale({ vary }: ImpactProtocol, energyPerLevel: number | null): LevelScale | null {
  if (energyPerLevel === null) return null;
  const perEnergy = 1 / energyPerLevel;
  return vary === 'mass'
    ? { quantity: 'medianFailureMass', unit: 'kg', perEnergy }
    : { quantity: 'medianFailureHeight', unit: 'mm', perEnergy };
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

/**
 * What a number must not be taken for, and what its interval takes for granted.
 *
 * @param again what became of calibrating it; null for an interval that is not meant to be calibrated
 */
function bindingRemark(
  { method, start, step }: ImpactProtocol,
  observations: Observations,
  again: Repeatable | null,
): string | null {
  const said: string[] = [];
  if (method === 'rising-height' && start !== null && step !== null) {
    const by =
      step.kind === 'additive' ? `${significant(step.size, 3)} mm` : `${significant(100 * step.ratio, 3)} %`;
    said.push(
      `bound to its protocol: hits from ${significant(start, 4)} mm in steps of ${by} on one tyre, each tyre taken to have one fixed strength`,
    );
  } else if (observations.mostDrops > 1) {
    const looks = `${observations.drops} drops on ${observations.specimens} specimens are repeat looks at them`;
    said.push(
      again?.kind === 'repeatable'
        ? `${looks}: the calibrated interval takes ${significant(100 * ASSUMED_SHARE, 2)} % of the variance to lie between tyres, which so few cannot show`
        : `${looks}, taken as independent here: the interval is too narrow (of nominal 95 % intervals some 75 to 88 % hold where half or more of the variance lies between tyres)`,
    );
  }
  if (again?.kind === 'not-repeatable') said.push(`the interval is not calibrated, since ${again.why}`);
  else if (again !== null && again.remark !== null) said.push(again.remark);
  return said.length === 0 ? null : said.join('; ');
}
