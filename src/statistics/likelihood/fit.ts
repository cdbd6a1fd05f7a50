import type { StandardLaw } from '../laws/standard-law.ts';
import { judgeExistence, type NoEstimate } from './existence.ts';
import { fitLocation } from './fit-location.ts';
import { maximiseConcave } from './maximise.ts';
import type { Sample } from './observation.ts';
import { emptyTerm, type LikelihoodTerm, sumTerms } from './term.ts';

/** Covariance of two estimates: variances and covariance. */
export interface Covariance {
  /** Variance of the location. */
  readonly location: number;
  /** Covariance of location and scale. */
  readonly cross: number;
  /** Variance of the scale. */
  readonly scale: number;
}

/** The maximum-likelihood location and scale on the fitted scale (of ln x for lognormal and Weibull). */
export interface Fit {
  readonly kind: 'exists';
  readonly location: number;
  readonly scale: number;
  /** On the original scale: of exact values the density of x (on the log scale Σ ln x less than that of ln x). */
  readonly logLikelihood: number;
  /** From the observed information. */
  readonly covariance: Covariance;
  readonly iterations: number;
}

/** Newton settles in 4 to 8 steps; where it has not in so many, the start is at fault. */
const MOST_ITERATIONS = 40;

interface Start {
  origin: number;
  predictor: number;
  steepness: number;
}

// Filled anew by each call: the search allocates nothing but its result.
const start: Start = { origin: 0, predictor: 0, steepness: 0 };
const terms: [LikelihoodTerm, LikelihoodTerm] = [emptyTerm(), emptyTerm()];

/**
 * Fits location and scale to a sample by Newton's method in η = −location/scale and b = 1/scale, where the
 * log-likelihood is concave: steps are halved until it rises, b stays positive, and the search ends when the Newton
 * decrement is below 1e-20 (a step of 1e-10 standard errors), and takes that step.
 *
 * Whether there is an estimate is decided from the data beforehand, never from convergence.
 *
 * @param sample gathered on the scale of the law
 * @throws Error when the search does not settle, which no sample is known to cause
 */
export function fitLocationScale(sample: Sample, law: StandardLaw): Fit | NoEstimate {
  const existence = judgeExistence(sample);
  if (existence.kind !== 'exists') return existence;
  chooseStart(sample, law);
  const quick = search(sample, law, start);
  if (quick) return quick;
  const slow = search(sample, law, climb(sample, law, start.steepness));
  if (slow) return slow;
  throw new Error(`the likelihood of ${sample.size} groups did not settle`);
}

function search(sample: Sample, law: StandardLaw, from: Start): Fit | null {
  const { origin } = from;
  let { predictor, steepness } = from;
  let [current, trial] = terms;
  sumTerms(sample, law, origin, predictor, steepness, current);
  for (let iteration = 1; iteration <= MOST_ITERATIONS; iteration++) {
    const { value, predictor2, cross, steepness2 } = current;
    const determinant = predictor2 * steepness2 - cross * cross;
    const stepPredictor = (cross * current.steepness - steepness2 * current.predictor) / determinant;
    const stepSteepness = (cross * current.predictor - predictor2 * current.steepness) / determinant;
    const decrement = stepPredictor * current.predictor + stepSteepness * current.steepness;
    // A flat place has a curvature of rounding; concavity says the decrement is positive.
    if (!(decrement >= 0 && determinant > 0)) return null;
    if (decrement < 1e-20)
      return toFit(sample, current, origin, predictor + stepPredictor, steepness + stepSteepness, iteration);
    let factor = stepSteepness < -0.8 * steepness ? (-0.8 * steepness) / stepSteepness : 1;
    for (;;) {
      const [p, s] = [predictor + factor * stepPredictor, steepness + factor * stepSteepness];
      sumTerms(sample, law, origin, p, s, trial);
      // A rise smaller than the rounding of the sum is none to wait for.
      if (trial.value >= value - 1e-14 * Math.abs(value) || factor < 1e-12) break;
      factor *= 0.5;
    }
    predictor += factor * stepPredictor;
    steepness += factor * stepSteepness;
    [current, trial] = [trial, current];
  }
  return null;
}

/**
 * A start near the maximum from anywhere: the profile over locations is concave in b, its slope is ∂b at the best
 * location, its curvature ∂bb − ∂ηb²/∂ηη.
 */
function climb(sample: Sample, law: StandardLaw, steepness: number): Start {
  const [term] = terms;
  let origin = 0;
  const best = maximiseConcave(
    (b, into) => {
      origin = fitLocation(sample, law, 1 / b)?.location ?? Number.NaN;
      sumTerms(sample, law, origin, 0, b, term);
      into.value = term.value;
      into.slope = term.steepness;
      into.curvature = term.steepness2 - (term.cross * term.cross) / term.predictor2;
    },
    steepness,
    0,
    7 * steepness,
  );
  return { origin, predictor: 0, steepness: best.at };
}

/**
 * Where to begin. Failures and survivals only: the discriminant of the two groups, b ∝ (difference of their means)/(variance
 * within), at the share failed. Otherwise the standard deviation of the middles of the intervals (open ones: their end).
 */
function chooseStart(sample: Sample, law: StandardLaw): void {
  let total = 0;
  let sum = 0;
  let squares = 0;
  let failed = 0;
  let failedSum = 0;
  let closed = 0;
  const first = sample.upper[0] === Infinity ? sample.lower[0]! : sample.upper[0]!;
  for (let i = 0; i < sample.size; i++) {
    const low = sample.lower[i]!;
    const high = sample.upper[i]!;
    const count = sample.count[i]!;
    const y = (low === -Infinity ? high : high === Infinity ? low : 0.5 * (low + high)) - first;
    total += count;
    sum += count * y;
    squares += count * y * y;
    if (low === -Infinity) {
      failed += count;
      failedSum += count * y;
    } else if (high !== Infinity) closed += count;
  }
  const mean = sum / total;
  const variance = squares / total - mean * mean;
  start.origin = first + mean;
  if (closed > 0) {
    start.predictor = law.quantile(0.5);
    start.steepness = 1 / Math.sqrt(variance);
    return;
  }
  const share = failed / total;
  const difference = failedSum / failed - (sum - failedSum) / (total - failed);
  // 0.6 takes a logistic slope to a normal one.
  start.steepness = (0.6 * difference) / (variance - share * (1 - share) * difference * difference);
  start.predictor = law.quantile(share);
}

function toFit(
  sample: Sample,
  { value, predictor2, cross, steepness2 }: LikelihoodTerm,
  origin: number,
  predictor: number,
  steepness: number,
  iterations: number,
): Fit {
  // The inverse of the information of (η, b), taken to location = origin − η/b and scale = 1/b. The gradient is 0 here, so
  // that the observed information of the one pair follows from that of the other.
  const determinant = predictor2 * steepness2 - cross * cross;
  const scale = 1 / steepness;
  const offset = -predictor * scale;
  const vPredictor = -steepness2 / determinant;
  const vCross = cross / determinant;
  const vSteepness = -predictor2 / determinant;
  const square = scale * scale;
  return {
    kind: 'exists',
    location: origin + offset,
    scale,
    logLikelihood: value + sample.logJacobian,
    covariance: {
      location: square * (vPredictor + 2 * offset * vCross + offset * offset * vSteepness),
      cross: square * scale * (vCross + offset * vSteepness),
      scale: square * square * vSteepness,
    },
    iterations,
  };
}
