import { incompleteBeta } from '../special/incomplete-beta.ts';
import { incompleteGamma } from '../special/incomplete-gamma.ts';
import { exchanged, type Tails, tailsOfLogLower, tailsOfLogUpper } from '../special/tails.ts';
import { type ProbabilityLaw, tailFunctions } from './probability-law.ts';

/** The binomial law: successes among so many trials, each with the same probability. P(X ≤ k) = I_{1−p}(n − k, k + 1). */
export function binomialLaw(trials: number, probability: number): ProbabilityLaw {
  const tails = (x: number): Tails => {
    const k = Math.floor(x);
    if (k < 0) return tailsOfLogLower(-Infinity);
    if (k >= trials) return tailsOfLogUpper(-Infinity);
    return incompleteBeta(trials - k, k + 1, 1 - probability, probability);
  };
  return countLaw(tails, trials * probability, trials);
}

/** The Poisson law of a mean: P(X ≤ k) = Q(k + 1, mean). */
export function poissonLaw(mean: number): ProbabilityLaw {
  const tails = (x: number): Tails => {
    const k = Math.floor(x);
    if (k < 0) return tailsOfLogLower(-Infinity);
    if (k === Infinity) return tailsOfLogUpper(-Infinity);
    return exchanged(incompleteGamma(k + 1, mean));
  };
  return countLaw(tails, mean, Infinity);
}

function countLaw(tails: (x: number) => Tails, mean: number, most: number): ProbabilityLaw {
  return {
    ...tailFunctions(tails),
    quantile(p) {
      if (!(p >= 0 && p <= 1)) return Number.NaN;
      return p === 1 ? most : smallestCount((k) => tails(k).lower >= p * (1 - FUZZ), mean);
    },
    quantileOfSf(q) {
      if (!(q >= 0 && q <= 1)) return Number.NaN;
      return q === 0 ? most : smallestCount((k) => tails(k).upper <= q * (1 + FUZZ), mean);
    },
  };
}

/** A step of the cdf that rounding puts a hair beside the probability asked for still counts as reaching it. */
const FUZZ = 1e-13;

/** The smallest k ≥ 0 that reaches; once reached, every larger one does. */
function smallestCount(reaches: (k: number) => boolean, start: number): number {
  let beyond = Math.ceil(start);
  let short = -1;
  for (let step = 1; !reaches(beyond); step *= 2) {
    short = beyond;
    beyond += step;
  }
  while (beyond - short > 1) {
    const middle = Math.floor((short + beyond) / 2);
    if (reaches(middle)) beyond = middle;
    else short = middle;
  }
  return beyond;
}
