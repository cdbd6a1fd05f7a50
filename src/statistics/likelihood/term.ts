import { type IntervalTerm, intervalTerm } from '../laws/interval.ts';
import type { LogTerm, StandardLaw } from '../laws/standard-law.ts';
import type { Sample } from './observation.ts';

/**
 * A log-likelihood with its derivatives to the predictor η and the steepness b, where z = η + b·y.
 *
 * b = 1/scale and η = −location/scale. In these the log-likelihood of every kind of observation is concave when the law
 * is log-concave (Pratt 1981, JASA 76, 103–106; Burridge 1981, JRSS B 43, 41–45). A regression puts η = Σ γ·covariate for
 * each observation, a specimen effect adds a term to η; both need no more than these six numbers per observation.
 */
export interface LikelihoodTerm {
  value: number;
  predictor: number;
  steepness: number;
  predictor2: number;
  cross: number;
  steepness2: number;
}

export function emptyTerm(): LikelihoodTerm {
  return { value: 0, predictor: 0, steepness: 0, predictor2: 0, cross: 0, steepness2: 0 };
}

// Written anew by each call and read before the next: the hot path allocates nothing.
const tail: LogTerm = { value: 0, slope: 0, curvature: 0 };
const interval: IntervalTerm = {
  value: 0,
  lowerSlope: 0,
  upperSlope: 0,
  lowerCurvature: 0,
  upperCurvature: 0,
  cross: 0,
};

/**
 * Σ count·log P(lower < Y ≤ upper) over a sample, with its derivatives, written into `into`; of exact values the log
 * density on the fitted scale.
 *
 * @param origin levels are taken from here: z = η + b·(y − origin). With the origin among the data nothing cancels; with
 *   the origin at a quantile the line of all laws through it is η = constant
 */
export function sumTerms(
  sample: Sample,
  law: StandardLaw,
  origin: number,
  predictor: number,
  steepness: number,
  into: LikelihoodTerm,
): LikelihoodTerm {
  const { size, lower, upper, count } = sample;
  into.value = 0;
  into.predictor = 0;
  into.steepness = 0;
  into.predictor2 = 0;
  into.cross = 0;
  into.steepness2 = 0;
  for (let i = 0; i < size; i++) {
    const low = lower[i]!;
    const high = upper[i]!;
    if (low === -Infinity) {
      const y = high - origin;
      law.logCdfTerm(predictor + steepness * y, tail);
      addPoint(count[i]!, y, tail.value, tail.slope, tail.curvature, into);
    } else if (high === Infinity) {
      const y = low - origin;
      law.logSfTerm(predictor + steepness * y, tail);
      addPoint(count[i]!, y, tail.value, tail.slope, tail.curvature, into);
    } else if (low === high) {
      addExact(law, low - origin, count[i]!, predictor, steepness, into);
    } else {
      addInterval(law, low - origin, high - origin, count[i]!, predictor, steepness, into);
    }
  }
  return into;
}

/** Adds a term that depends on z = η + b·y alone: its value and its first and second derivative to z. */
function addPoint(
  count: number,
  y: number,
  value: number,
  slope: number,
  curvature: number,
  into: LikelihoodTerm,
): void {
  into.value += count * value;
  into.predictor += count * slope;
  into.steepness += count * slope * y;
  into.predictor2 += count * curvature;
  into.cross += count * curvature * y;
  into.steepness2 += count * curvature * y * y;
}

/** log(b·f(z)) */
function addExact(
  law: StandardLaw,
  y: number,
  count: number,
  predictor: number,
  steepness: number,
  into: LikelihoodTerm,
): void {
  const z = predictor + steepness * y;
  addPoint(count, y, law.logPdf(z), law.dLogPdf(z), law.d2LogPdf(z), into);
  into.value += count * Math.log(steepness);
  into.steepness += count / steepness;
  into.steepness2 -= count / (steepness * steepness);
}

function addInterval(
  law: StandardLaw,
  low: number,
  high: number,
  count: number,
  predictor: number,
  steepness: number,
  into: LikelihoodTerm,
): void {
  const middle = predictor + steepness * 0.5 * (low + high);
  const half = 0.5 * steepness * (high - low);
  if (half * (1 + Math.abs(law.dLogPdf(middle))) < NARROW) {
    addNarrow(law, low, high, count, predictor, steepness, into);
    return;
  }
  intervalTerm(law, predictor + steepness * low, predictor + steepness * high, interval);
  const { lowerSlope, upperSlope, lowerCurvature, upperCurvature, cross } = interval;
  into.value += count * interval.value;
  into.predictor += count * (lowerSlope + upperSlope);
  into.steepness += count * (lowerSlope * low + upperSlope * high);
  into.predictor2 += count * (lowerCurvature + 2 * cross + upperCurvature);
  into.cross += count * (lowerCurvature * low + cross * (low + high) + upperCurvature * high);
  into.steepness2 +=
    count * (lowerCurvature * low * low + 2 * cross * low * high + upperCurvature * high * high);
}

/** Half width, in units in which log f changes by one, under which five points integrate f to 1e-15. */
const NARROW = 0.1;
const NODES = [-0.906179845938664, -0.5384693101056831, 0, 0.5384693101056831, 0.906179845938664];
const WEIGHTS = [
  0.23692688505618908, 0.47862867049936647, 0.56888888888888889, 0.47862867049936647, 0.23692688505618908,
];

/**
 * An interval so narrow that the differences at its ends cancel: the likelihood is the mean of b·f over five
 * Gauss–Legendre points times the width, and its derivatives are those of a mixture, ℓ′ = E[s] and ℓ″ = E[s′] + Var[s],
 * with s the score of an exact value and the expectation over the points weighted by f.
 */
function addNarrow(
  law: StandardLaw,
  low: number,
  high: number,
  count: number,
  predictor: number,
  steepness: number,
  into: LikelihoodTerm,
): void {
  const centre = 0.5 * (low + high);
  const half = 0.5 * (high - low);
  const reference = law.logPdf(predictor + steepness * centre);
  let mass = 0;
  let p = 0;
  let s = 0;
  let pp = 0;
  let ps = 0;
  let ss = 0;
  for (let k = 0; k < 5; k++) {
    const y = centre + half * NODES[k]!;
    const z = predictor + steepness * y;
    const weight = WEIGHTS[k]! * Math.exp(law.logPdf(z) - reference);
    const score = law.dLogPdf(z);
    const square = law.d2LogPdf(z) + score * score;
    mass += weight;
    p += weight * score;
    s += weight * score * y;
    pp += weight * square;
    ps += weight * square * y;
    ss += weight * square * y * y;
  }
  p /= mass;
  s /= mass;
  // E[s′ + s²] with the b-score 1/b + y·(log f)′; the 1/b terms are put in by hand.
  into.value += count * (reference + Math.log(steepness * half * mass));
  into.predictor += count * p;
  into.steepness += count * (s + 1 / steepness);
  into.predictor2 += count * (pp / mass - p * p);
  into.cross += count * (ps / mass - p * s);
  into.steepness2 += count * (ss / mass - s * s - 1 / (steepness * steepness));
}
