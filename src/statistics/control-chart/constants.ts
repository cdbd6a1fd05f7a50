import { rangeBeyond } from '../laws/studentized-range.ts';
import { logGamma } from '../special/log-gamma.ts';

/** The factors of Shewhart charts for subgroups of n normal values (ISO 7870-2; ASTM MNL 7). */
export interface ChartConstants {
  /** Mean of the range, in standard deviations. */
  readonly d2: number;
  /** Standard deviation of the range. */
  readonly d3: number;
  /** Mean of the sample standard deviation. */
  readonly c4: number;
  /** Limits of the mean about the grand mean, in mean ranges. */
  readonly A2: number;
  /** The same in mean standard deviations. */
  readonly A3: number;
  /** Limits of the standard deviation, in mean standard deviations. */
  readonly B3: number;
  readonly B4: number;
  /** The same in known standard deviations. */
  readonly B5: number;
  readonly B6: number;
  /** Limits of the range, in known standard deviations. */
  readonly D1: number;
  readonly D2: number;
  /** The same in mean ranges. */
  readonly D3: number;
  readonly D4: number;
  /** Limits of single values about their mean, in mean (moving) ranges. */
  readonly E2: number;
}

/**
 * The factors at full precision: printed tables round d2 and d3 first and so differ in their last digit.
 *
 * @param n 2 or more; else a RangeError
 */
export function chartConstants(n: number): ChartConstants {
  if (!(Number.isInteger(n) && n >= 2)) throw new RangeError(`subgroups of ${n} have no range`);
  const { mean: d2, standardDeviation: d3 } = rangeMoments(n);
  const c4 = Math.sqrt(2 / (n - 1)) * Math.exp(logGamma(0.5 * n) - logGamma(0.5 * (n - 1)));
  const spread = 3 * Math.sqrt(1 - c4 * c4);
  const root = Math.sqrt(n);
  return {
    d2,
    d3,
    c4,
    A2: 3 / (d2 * root),
    A3: 3 / (c4 * root),
    B3: Math.max(0, 1 - spread / c4),
    B4: 1 + spread / c4,
    B5: Math.max(0, c4 - spread),
    B6: c4 + spread,
    D1: Math.max(0, d2 - 3 * d3),
    D2: d2 + 3 * d3,
    D3: Math.max(0, 1 - (3 * d3) / d2),
    D4: 1 + (3 * d3) / d2,
    E2: 3 / d2,
  };
}

/** Step and ends of the trapezoidal rule over u = ln w: the integrands vanish at both ends and are smooth. */
const STEP = 0.05;
const START = -38;
const END = 3.5;

const known = new Map<number, { mean: number; standardDeviation: number }>();

/** E(W) = ∫ P(W > w) dw and E(W²) = 2 ∫ w P(W > w) dw of the range of n standard normal values, with w = eᵘ. */
function rangeMoments(n: number): { mean: number; standardDeviation: number } {
  const before = known.get(n);
  if (before) return before;
  let first = 0;
  let second = 0;
  for (let u = START; u <= END; u += STEP) {
    const w = Math.exp(u);
    const beyond = w * rangeBeyond(n, w);
    first += beyond;
    second += 2 * w * beyond;
  }
  first *= STEP;
  second *= STEP;
  const found = { mean: first, standardDeviation: Math.sqrt(second - first * first) };
  // Some milliseconds of quadrature, the same each time.
  known.set(n, found);
  return found;
}
