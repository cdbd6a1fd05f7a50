import type { LawName } from '../statistics/law.ts';
import { laws } from '../statistics/laws/laws.ts';
import type { ProfileBasis } from '../statistics/likelihood/constrained.ts';
import { likelihoodRatioCritical } from '../statistics/likelihood/critical.ts';
import { fitLocation } from '../statistics/likelihood/fit-location.ts';
import { constantSupremum, thresholdSupremum } from '../statistics/likelihood/limits.ts';
import { estimateQuantile } from '../statistics/likelihood/quantile.ts';
import type { Estimator, IntervalKind } from './estimator.ts';
import { signedRoot } from './quantile-test.ts';

const METHOD = 'censored-likelihood';
const PROFILE = 'profile-likelihood';

/** Two-sided interval and one-sided lower bound of a quantile of the fitted law. */
export function quantileEstimator(distribution: LawName, probability: number, confidence: number): Estimator {
  const law = laws[distribution];
  const z = law.standard.quantile(probability);
  const two = likelihoodRatioCritical(confidence, 2);
  const one = likelihoodRatioCritical(confidence, 1);
  const rootTwo = Math.sqrt(two);
  const rootOne = Math.sqrt(one);
  const isMedian = probability === 0.5;
  return {
    quantity: isMedian ? 'medianFailureEnergy' : 'failureEnergyQuantile',
    ...(isMedian ? {} : { probability }),
    method: METHOD,
    unit: 'J',
    intervals: [kind(confidence, 2), kind(confidence, 1)],
    errorOf({ basis, truth }, [twoSided, lower]) {
      const target = truth.quantile(probability);
      if (twoSided !== undefined && lower !== undefined) {
        const root = signedRoot(basis, probability, target);
        if (Math.abs(root) <= rootTwo) twoSided.held += 1;
        if (root <= rootOne) lower.held += 1;
        if (isOpen(basis, z, two, -1) || isOpen(basis, z, two, 1)) twoSided.unbounded += 1;
        if (isOpen(basis, z, one, -1)) lower.unbounded += 1;
      }
      const { fit } = basis;
      return fit.kind === 'exists' ? estimateQuantile(fit, law, probability).value - target : Number.NaN;
    },
  };
}

/** The scale parameter of the fitted law; its error only where the tyres follow that law. */
export function spreadEstimator(distribution: LawName, truth: LawName, confidence: number): Estimator {
  const critical = likelihoodRatioCritical(confidence, 2);
  const unit = distribution === 'normal' || distribution === 'logistic' ? 'J' : '1';
  const head = { quantity: 'energySpread', method: METHOD, unit };
  if (truth !== distribution) return { ...head, intervals: [], errorOf: () => Number.NaN };
  return {
    ...head,
    intervals: [kind(confidence, 2)],
    errorOf({ basis, truth: { spread } }, [twoSided]) {
      const { sample, law, fit, ends, supremum } = basis;
      if (twoSided !== undefined) {
        const best = fitLocation(sample, law, spread)?.logLikelihood ?? 0;
        if (2 * (supremum - best) <= critical) twoSided.held += 1;
        const level = supremum - 0.5 * critical;
        const anySmall = thresholdSupremum(sample, ends, law, -Infinity, Infinity) >= level;
        const anyLarge = constantSupremum(ends, law, -Infinity, Infinity) >= level;
        if (anySmall || anyLarge) twoSided.unbounded += 1;
      }
      return fit.kind === 'exists' ? fit.scale - spread : Number.NaN;
    },
  };
}

function kind(level: number, sides: 1 | 2): IntervalKind {
  return { level, sides, method: PROFILE };
}

/** Whether the profile interval of the quantile at F(z) is open downwards or upwards (see profileQuantile). */
function isOpen({ ends, law, supremum }: ProfileBasis, z: number, critical: number, side: -1 | 1): boolean {
  const limit =
    side > 0 ? constantSupremum(ends, law, -Infinity, z) : constantSupremum(ends, law, z, Infinity);
  return limit >= supremum - 0.5 * critical;
}
