import { prepareProfile } from '../likelihood/constrained.ts';
import type { Sample } from '../likelihood/observation.ts';
import { type BestLine, bestLine } from './best-line.ts';
import { type LawTable, type TailPoint, tailAt } from './law-table.ts';

/** What a sample's likelihood comes to: where it is best, and how large it is there. */
export interface QuickBest extends BestLine {
  supremum: number;
}

/** Twice the log-likelihood that may be left to gain; the quadratic rest is added. */
const ENOUGH = 1e-3;
const MOST_STEPS = 20;

// Filled anew by each call: thousands of simulated tests are fitted for one interval.
const sums = { total: 0, mean: 0, variance: 0, share: 0, difference: 0, closed: 0, exists: false };
const term = { value: 0, eta: 0, b: 0, eta2: 0, cross: 0, b2: 0 };
const below: TailPoint = { value: 0, slope: 0, curvature: 0 };
const above: TailPoint = { value: 0, slope: 0, curvature: 0 };

/**
 * The best line and the supremum of a sample on the identity scale as prepareProfile finds them, to a thousandth of a
 * standard error and 1e-4, in a fifth of the time: for the critical values of simulated tests, which are not known better.
 * What has no estimate, or does not settle at once, is left to prepareProfile. No exact values.
 */
export function fitQuickly(sample: Sample, table: LawTable, into: QuickBest): void {
  survey(sample);
  if (!(sums.exists && newton(sample, table, into))) {
    const basis = prepareProfile(sample, table.law);
    Object.assign(into, bestLine(basis));
    into.supremum = basis.supremum;
  }
}

/** Newton's method in η and b, z = η + b·(y − mean), as fitLocationScale has it. */
function newton(sample: Sample, table: LawTable, into: QuickBest): boolean {
  const { mean, closed, share, difference, variance } = sums;
  let eta = table.law.quantile(closed > 0 ? 0.5 : share);
  let b =
    closed > 0
      ? 1 / Math.sqrt(variance)
      : (0.6 * difference) / (variance - share * (1 - share) * difference * difference);
  let last = -Infinity;
  let stepEta = 0;
  let stepB = 0;
  for (let step = 0; step < MOST_STEPS; step++) {
    sumUp(sample, table, mean, eta, b);
    if (term.value < last - 1e-9) {
      stepEta *= 0.5;
      stepB *= 0.5;
      eta -= stepEta;
      b -= stepB;
      continue;
    }
    const determinant = term.eta2 * term.b2 - term.cross * term.cross;
    stepEta = (term.cross * term.b - term.b2 * term.eta) / determinant;
    stepB = (term.cross * term.eta - term.eta2 * term.b) / determinant;
    const decrement = stepEta * term.eta + stepB * term.b;
    if (!(decrement >= 0 && determinant > 0)) return false;
    if (decrement < ENOUGH) {
      into.scale = 1 / (b + stepB);
      into.location = mean - (eta + stepEta) * into.scale;
      into.turn = Number.NaN;
      into.supremum = term.value + 0.5 * decrement;
      return true;
    }
    last = term.value;
    const factor = stepB < -0.8 * b ? (-0.8 * b) / stepB : 1;
    stepEta *= factor;
    stepB *= factor;
    eta += stepEta;
    b += stepB;
  }
  return false;
}

/** Whether there is an estimate (judgeExistence says why), and moments to begin from (chooseStart says why these). */
function survey({ size, lower, upper, count }: Sample): void {
  let highestLower = -Infinity;
  let lowestUpper = Infinity;
  let total = 0;
  let failed = 0;
  let closed = 0;
  let failedSum = 0;
  let sum = 0;
  let squares = 0;
  const first = upper[0] === Infinity ? lower[0]! : upper[0]!;
  for (let i = 0; i < size; i++) {
    const low = lower[i]!;
    const high = upper[i]!;
    const n = count[i]!;
    if (low > highestLower) highestLower = low;
    if (high < lowestUpper) lowestUpper = high;
    const y = (low === -Infinity ? high : high === Infinity ? low : 0.5 * (low + high)) - first;
    total += n;
    sum += n * y;
    squares += n * y * y;
    if (low === -Infinity) {
      failed += n;
      failedSum += n * y;
    } else if (high !== Infinity) closed += n;
  }
  const mean = sum / total;
  const difference = failedSum / failed - (sum - failedSum) / (total - failed);
  sums.total = total;
  sums.mean = first + mean;
  sums.variance = squares / total - mean * mean;
  sums.share = failed / total;
  sums.difference = difference;
  sums.closed = closed;
  sums.exists = highestLower > lowestUpper && (closed > 0 || difference > 1e-9 * Math.abs(mean) + 1e-12);
}

function sumUp(
  { size, lower, upper, count }: Sample,
  table: LawTable,
  origin: number,
  eta: number,
  b: number,
) {
  let value = 0;
  let g = 0;
  let gb = 0;
  let h = 0;
  let hc = 0;
  let hb = 0;
  for (let i = 0; i < size; i++) {
    const low = lower[i]! - origin;
    const high = upper[i]! - origin;
    const n = count[i]!;
    if (low === -Infinity || high === Infinity) {
      const isFailure = low === -Infinity;
      const y = isFailure ? high : low;
      tailAt(isFailure ? table.cdf : table.sf, eta + b * y, below);
      const { value: v, slope, curvature } = below;
      value += n * v;
      g += n * slope;
      gb += n * slope * y;
      h += n * curvature;
      hc += n * curvature * y;
      hb += n * curvature * y * y;
    } else {
      // P = F(high) − F(low), in the tail where it does not cancel; its score at each end is ±f/P.
      const isLow = eta + 0.5 * b * (low + high) < 0;
      const tail = isLow ? table.cdf : table.sf;
      tailAt(tail, eta + b * (isLow ? high : low), below);
      tailAt(tail, eta + b * (isLow ? low : high), above);
      const ratio = Math.exp(above.value - below.value);
      const rest = Math.max(1 - ratio, 1e-12);
      // With the larger tail's logarithm taken out: scores of the ends near to and far from the tail's mass.
      const near = below.slope / rest;
      const far = (-above.slope * ratio) / rest;
      const near2 = (below.curvature + below.slope * below.slope) / rest - near * near;
      const far2 = (-(above.curvature + above.slope * above.slope) * ratio) / rest - far * far;
      const both = -near * far;
      const yn = isLow ? high : low;
      const yf = isLow ? low : high;
      value += n * (below.value + Math.log(rest));
      g += n * (near + far);
      gb += n * (near * yn + far * yf);
      h += n * (near2 + 2 * both + far2);
      hc += n * (near2 * yn + both * (yn + yf) + far2 * yf);
      hb += n * (near2 * yn * yn + 2 * both * yn * yf + far2 * yf * yf);
    }
  }
  term.value = value;
  term.eta = g;
  term.b = gb;
  term.eta2 = h;
  term.cross = hc;
  term.b2 = hb;
}
