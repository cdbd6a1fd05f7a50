import type { Observation } from '../../../src/statistics/likelihood/observation.ts';

/** A law as a test writes it down: by its distribution function alone, in the open, good where nothing is extreme. */
export type Cdf = (z: number) => number;

export const naiveLaws: Record<'logistic' | 'weibull', Cdf> = {
  logistic: (z) => 1 / (1 + Math.exp(-z)),
  weibull: (z) => 1 - Math.exp(-Math.exp(z)),
};

/** Σ count·log(F(upper) − F(lower)), by the definition. */
export function naiveLogLikelihood(
  observations: readonly Observation[],
  cdf: Cdf,
  location: number,
  scale: number,
): number {
  return observations.reduce((sum, { lower, upper, count }) => {
    const high = upper === Infinity ? 1 : cdf((upper - location) / scale);
    const low = lower === -Infinity ? 0 : cdf((lower - location) / scale);
    return sum + count * Math.log(high - low);
  }, 0);
}
