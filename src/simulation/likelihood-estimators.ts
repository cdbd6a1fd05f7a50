import type { LawName } from '../statistics/law.ts';
import { laws } from '../statistics/laws/laws.ts';
import type { ProfileBasis } from '../statistics/likelihood/constrained.ts';
import { likelihoodRatioCritical } from '../statistics/likelihood/critical.ts';
import { fitLocation } from '../statistics/likelihood/fit-location.ts';
import { constantSupremum, thresholdSupremum } from '../statistics/likelihood/limits.ts';
import { estimateQuantile } from '../statistics/likelihood/quantile.ts';
import { once, onceAt } from './alike.ts';
import { type Limits, profileLimits } from './bounds.ts';
import type { Estimator, IntervalKind } from './estimator.ts';

const METHOD = 'censored-likelihood';
const PROFILE = 'profile-likelihood';

/** Two-sided interval and one-sided lower bound of a quantile of the fitted law: calibrated where they are had, and profile. */
export function quantileEstimator(
  distribution: LawName,
  probability: number,
  confidence: number,
  calibrated: Limits | null,
): Estimator {
  const law = laws[distribution];
  const z = law.standard.quantile(probability);
  const two = likelihoodRatioCritical(confidence, 2);
  const one = likelihoodRatioCritical(confidence, 1);
  const isMedian = probability === 0.5;
  const ways = [
    ...(calibrated === null ? [] : [{ method: 'calibrated', limits: calibrated }]),
    { method: PROFILE, limits: profileLimits },
  ].map(({ method, limits }) => ({
    method,
    beside: onceAt((basis, target) => limits(basis, probability, target, confidence)),
  }));
  const open = once((basis) => ({
    two: isOpen(basis, z, two, -1) || isOpen(basis, z, two, 1),
    one: isOpen(basis, z, one, -1),
  }));
  const estimated = once(({ fit }) =>
    fit.kind === 'exists' ? estimateQuantile(fit, law, probability).value : Number.NaN,
  );
  return {
    quantity: isMedian ? 'medianFailureEnergy' : 'failureEnergyQuantile',
    ...(isMedian ? {} : { probability }),
    method: METHOD,
    unit: 'J',
    intervals: ways.flatMap(({ method }) => [kind(confidence, 2, method), kind(confidence, 1, method)]),
    errorOf({ basis, truth }, tallies) {
      const target = truth.quantile(probability);
      for (let k = 0; 2 * k + 1 < tallies.length; k++) {
        const [twoSided, lower] = [tallies[2 * k]!, tallies[2 * k + 1]!];
        const { held, boundAbove } = ways[k]!.beside(basis, target);
        if (held) twoSided.held += 1;
        if (!boundAbove) lower.held += 1;
        const isOpenAt = open(basis);
        if (isOpenAt.two) twoSided.unbounded += 1;
        if (isOpenAt.one) lower.unbounded += 1;
      }
      return estimated(basis) - target;
    },
  };
}

/** The scale parameter of the fitted law; its error only where the tyres follow that law. */
export function spreadEstimator(distribution: LawName, truth: LawName, confidence: number): Estimator {
  const critical = likelihoodRatioCritical(confidence, 2);
  const unit = distribution === 'normal' || distribution === 'logistic' ? 'J' : '1';
  const head = { quantity: 'energySpread', method: METHOD, unit };
  if (truth !== distribution) return { ...head, intervals: [], errorOf: () => Number.NaN };
  const beside = onceAt((basis, spread) => spreadBeside(basis, spread, critical));
  return {
    ...head,
    intervals: [kind(confidence, 2, PROFILE)],
    errorOf({ basis, truth: { spread } }, [twoSided]) {
      if (twoSided !== undefined) {
        const { held, unbounded } = beside(basis, spread);
        if (held) twoSided.held += 1;
        if (unbounded) twoSided.unbounded += 1;
      }
      return basis.fit.kind === 'exists' ? basis.fit.scale - spread : Number.NaN;
    },
  };
}

function spreadBeside({ sample, law, ends, supremum }: ProfileBasis, spread: number, critical: number) {
  const best = fitLocation(sample, law, spread)?.logLikelihood ?? 0;
  const level = supremum - 0.5 * critical;
  const anySmall = thresholdSupremum(sample, ends, law, -Infinity, Infinity) >= level;
  const anyLarge = constantSupremum(ends, law, -Infinity, Infinity) >= level;
  return { held: 2 * (supremum - best) <= critical, unbounded: anySmall || anyLarge };
}

function kind(level: number, sides: 1 | 2, method: string): IntervalKind {
  return { level, sides, method };
}

/** Whether the profile interval of the quantile at F(z) is open downwards or upwards (see profileQuantile). */
function isOpen({ ends, law, supremum }: ProfileBasis, z: number, critical: number, side: -1 | 1): boolean {
  const limit =
    side > 0 ? constantSupremum(ends, law, -Infinity, z) : constantSupremum(ends, law, z, Infinity);
  return limit >= supremum - 0.5 * critical;
}
