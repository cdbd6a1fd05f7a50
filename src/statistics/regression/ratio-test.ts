import { chiSquaredLaw } from '../laws/gamma.ts';
import type { RegressionFit } from './fit.ts';

/** A likelihood-ratio test of a smaller model within a larger one. */
export interface RatioTest {
  /** Twice the difference of the log-likelihoods. */
  readonly statistic: number;
  /** The number of effects and scales that the larger model has more. */
  readonly degrees: number;
  /** By the chi-squared law, which holds in large samples. */
  readonly p: number;
}

/**
 * Compares two fits of the same observations under the same law, the smaller one being the larger with effects or
 * differences of scale set to nought. Throws a RangeError where the larger one has no more parameters.
 */
export function ratioTest(smaller: RegressionFit, larger: RegressionFit): RatioTest {
  const count = (fit: RegressionFit) => fit.effects.length + fit.scales.length;
  const degrees = count(larger) - count(smaller);
  if (degrees < 1) throw new RangeError('the larger model has no more parameters than the smaller one');
  // Rounding may leave two equal likelihoods a hair apart the wrong way round.
  const statistic = Math.max(0, 2 * (larger.logLikelihood - smaller.logLikelihood));
  return { statistic, degrees, p: chiSquaredLaw(degrees).sf(statistic) };
}
