import { curveQuantile } from '../statistics/isotonic/curve-quantile.ts';
import { type Corner, centredIsotonicCurve, isotonicCurve } from '../statistics/isotonic/failure-curve.ts';
import { orderInterval } from '../statistics/isotonic/order-interval.ts';
import type { Response } from '../statistics/isotonic/response.ts';
import type { ProfileBasis } from '../statistics/likelihood/constrained.ts';
import { normalCritical } from '../statistics/likelihood/critical.ts';
import { fromScale, type Sample, toScale } from '../statistics/likelihood/observation.ts';
import { smallestTrim, spearmanKarber } from '../statistics/spearman-karber/spearman-karber.ts';
import { once } from './alike.ts';
import type { Estimator } from './estimator.ts';

/**
 * The estimators of single looks that assume no law: the median off the isotonic failure curve and off the centred one,
 * each with its order limits, and the Spearman–Kärber mean, trimmed by as little as it must be, with its Wald interval.
 */
export function curveEstimators(confidence: number, scale: Sample['scale']): Estimator[] {
  const responses = once(responsesOf);
  const limits = once((basis) => orderInterval(responses(basis), 0.5, confidence));
  return [
    offCurve('isotonic', isotonicCurve),
    offCurve('centred-isotonic', centredIsotonicCurve),
    spearmanKarberEstimator(),
  ];

  function offCurve(method: string, curveOf: (responses: readonly Response[]) => Corner[]): Estimator {
    const found = once((basis) => curveQuantile(curveOf(responses(basis)), 0.5).value);
    return {
      quantity: 'medianFailureEnergy',
      method,
      unit: 'J',
      intervals: [{ level: confidence, sides: 2, method: 'order-limits' }],
      errorOf({ basis, truth }, [interval]) {
        if (interval) {
          const { lower, upper } = limits(basis);
          const y = toScale(truth.median, scale);
          if (lower <= y && y <= upper) interval.held += 1;
          if (lower === -Infinity || upper === Infinity) interval.unbounded += 1;
        }
        const value = found(basis);
        return value === null ? Number.NaN : fromScale(value, scale) - truth.median;
      },
    };
  }

  function spearmanKarberEstimator(): Estimator {
    const z = normalCritical(confidence, 2);
    const found = once((basis) => trimmedMean(responses(basis)));
    return {
      quantity: 'medianFailureEnergy',
      method: 'spearman-karber',
      unit: 'J',
      intervals: [{ level: confidence, sides: 2, method: 'wald' }],
      errorOf({ basis, truth }, [interval]) {
        const value = found(basis);
        if (value === null) {
          if (interval) interval.absent += 1;
          return Number.NaN;
        }
        const off = Math.abs(value.mean - toScale(truth.median, scale));
        if (interval && off <= z * value.standardError) interval.held += 1;
        return fromScale(value.mean, scale) - truth.median;
      },
    };
  }
}

/** As analyze has it: plain where the curve runs from 0 to 1, else with the smallest trim that gives a value. */
function trimmedMean(responses: readonly Response[]) {
  const plain = spearmanKarber(responses);
  if (plain.value !== null) return plain.value;
  const trim = smallestTrim(responses);
  return trim === null ? null : spearmanKarber(responses, trim).value;
}

/** Failures and drops by level, of a sample of single looks. */
function responsesOf({ sample: { size, lower, upper, count } }: ProfileBasis): Response[] {
  const levels = new Map<number, { level: number; failures: number; drops: number }>();
  for (let i = 0; i < size; i++) {
    const isFailure = lower[i] === -Infinity;
    const level = isFailure ? upper[i]! : lower[i]!;
    const row = levels.get(level) ?? { level, failures: 0, drops: 0 };
    levels.set(level, row);
    row.drops += count[i]!;
    if (isFailure) row.failures += count[i]!;
  }
  return [...levels.values()];
}
