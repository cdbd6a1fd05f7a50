import type { EstimatorName, ImpactProtocol } from '../../documents/kinds.ts';
import type { Estimate } from '../../result/estimate.ts';
import {
  biasCorrectedSpread,
  meanOfLevelsEstimate,
  smallSampleEstimate,
  toleranceFactorLimit,
} from './counted.ts';
import {
  centredIsotonicEstimate,
  isotonicEstimate,
  nonparametricEstimate,
  spearmanKarberEstimate,
} from './curves.ts';
import type { Estimator, LevelEvidence } from './evidence.ts';

/** Every estimator beside the likelihood and the count; a new one is one line here. */
const ESTIMATORS: Readonly<Record<Exclude<EstimatorName, 'goodness-of-fit'>, Estimator>> = {
  'mean-of-levels': meanOfLevelsEstimate,
  'small-sample': smallSampleEstimate,
  'bias-corrected-spread': biasCorrectedSpread,
  'tolerance-factor': toleranceFactorLimit,
  isotonic: isotonicEstimate,
  'centred-isotonic': centredIsotonicEstimate,
  'spearman-karber': spearmanKarberEstimate,
  nonparametric: nonparametricEstimate,
};

/** Estimators that belong to a method by custom, and stand in every report of it. */
const CUSTOMARY: Partial<Record<ImpactProtocol['method'], readonly EstimatorName[]>> = {
  'transformed-up-and-down': ['centred-isotonic'],
  'fixed-level': ['spearman-karber'],
};

/**
 * The estimators of a report, in the order of the map: those of the method, those that the protocol or the person asks
 * for, and the small-sample median of an up-and-down test for which the likelihood has no best value.
 */
export function estimatorsFor(
  protocol: ImpactProtocol,
  asked: readonly EstimatorName[],
  hasEstimate: boolean,
): EstimatorName[] {
  const wanted = new Set([...(CUSTOMARY[protocol.method] ?? []), ...protocol.estimators, ...asked]);
  if (protocol.method === 'up-and-down' && !hasEstimate) wanted.add('small-sample');
  return (Object.keys(ESTIMATORS) as EstimatorName[]).filter((name) => wanted.has(name));
}

export function estimateBy(names: readonly EstimatorName[], evidence: LevelEvidence): Estimate[] {
  return names.flatMap((name) => (name === 'goodness-of-fit' ? [] : ESTIMATORS[name](evidence)));
}
