import type { ImpactProtocol } from '../../documents/kinds.ts';
import { significant } from '../../quantity/format.ts';
import type { Estimate } from '../../result/estimate.ts';
import { likelihoodRatioCritical } from '../../statistics/likelihood/critical.ts';
import { predictQuantile } from '../../statistics/regression/predict.ts';
import { profilePrediction } from '../../statistics/regression/profile.ts';
import type { Observations } from '../observations.ts';
import { unitOfCovariate } from './covariates.ts';
import { meanOf, type Regressed } from './regress.ts';

/** The protocol's own values of the conditions that may be adjusted to; null where it states none for this tyre. */
export interface PlannedConditions {
  readonly pressure: number | null;
  readonly temperature: number | null;
}

/** Shares failed that are given adjusted: those that are always given unadjusted. */
const SHARES = [0.5, 0.1] as const;

/**
 * The median and the 10 % point adjusted to the protocol's conditions, beside the unadjusted ones: off unless the
 * protocol asks for it. Other numbers stand at their mean, factors at their first level.
 */
export function adjustedEstimates(
  { confidence, distribution, regression }: ImpactProtocol,
  { fit, model, covariates, result }: Regressed,
  planned: PlannedConditions,
  { specimens, drops }: Observations,
): Estimate[] {
  const adjust = regression?.adjust ?? [];
  if (adjust.length === 0) return [];
  const head = {
    method: 'regression',
    variant: `adjusted-to-${adjust.join('-and-')}`,
    distribution,
    unit: 'J',
    value: null,
    standardError: null,
    interval: null,
    specimens,
    drops,
  };
  const unplanned = adjust.filter((name) => planned[name] === null);
  const obstacle =
    fit === null
      ? `no regression to adjust by: ${result.why}`
      : unplanned.length > 0
        ? `the protocol states no ${unplanned.join(' and no ')} for these tyres`
        : null;
  if (fit === null || obstacle !== null) return [{ ...head, quantity: 'medianFailureEnergy', why: obstacle }];
  const setting: Record<string, string | number> = {};
  const said: string[] = [];
  for (const covariate of covariates) {
    if (covariate.kind === 'factor') {
      setting[covariate.name] = covariate.values[0]!;
      said.push(`${covariate.name} ${covariate.values[0]}`);
      continue;
    }
    const mean = meanOf(covariate.values);
    const name = adjust.find((one) => one === covariate.name);
    const value = name === undefined ? mean : planned[name]!;
    setting[covariate.name] = value - mean;
    said.push(`${covariate.name} ${significant(value, 4)} ${unitOfCovariate(covariate.name)}`);
  }
  const critical = likelihoodRatioCritical(confidence, 2);
  const why = `at ${said.join(', ')}; beside the unadjusted estimate, which stays the headline`;
  return SHARES.map((share) => {
    const found = predictQuantile(fit, share, setting);
    const { lower, upper } = profilePrediction(model, fit, share, setting, critical);
    return {
      ...head,
      ...(share === 0.5
        ? { quantity: 'medianFailureEnergy' }
        : { quantity: 'failureEnergyQuantile', probability: share }),
      value: found.value,
      standardError: found.standardError,
      interval: { level: confidence, sides: 2, lower, upper, method: 'profile-likelihood' },
      why,
    };
  });
}
