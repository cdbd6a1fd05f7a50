import { compensatedSum, mean } from '../summary/moments.ts';

/** A straight line by least squares, all the scatter in y. */
export interface Line {
  readonly n: number;
  readonly intercept: number;
  readonly slope: number;
  readonly interceptError: number;
  readonly slopeError: number;
  /** √(residual sum of squares/(n − 2)); NaN for two points. */
  readonly residualDeviation: number;
  readonly residualSum: number;
  readonly degrees: number;
  readonly meanX: number;
  readonly meanY: number;
  /** Σ (x − mean)² */
  readonly sumXX: number;
  /** NaN where y does not vary. */
  readonly rSquared: number;
  /** Regression mean square over the residual one. */
  readonly f: number;
}

/**
 * Fits y = intercept + slope·x, about the means.
 *
 * @throws RangeError for lists of unequal length, fewer than two points, or x that do not differ
 */
export function fitLine(x: readonly number[], y: readonly number[]): Line {
  if (x.length !== y.length) throw new RangeError(`${x.length} values of x against ${y.length} of y`);
  const n = x.length;
  if (n < 2) throw new RangeError('a line needs two points');
  const [meanX, meanY] = [mean(x), mean(y)];
  const dx = x.map((value) => value - meanX);
  const dy = y.map((value) => value - meanY);
  const sumXX = compensatedSum(dx.map((d) => d * d));
  if (!(sumXX > 0)) throw new RangeError('all points lie at one x; no line follows');
  const slope = compensatedSum(dx.map((d, i) => d * dy[i]!)) / sumXX;
  const residualSum = compensatedSum(dx.map((d, i) => (dy[i]! - slope * d) ** 2));
  const total = compensatedSum(dy.map((d) => d * d));
  const degrees = n - 2;
  const residualDeviation = Math.sqrt(residualSum / degrees);
  return {
    n,
    intercept: meanY - slope * meanX,
    slope,
    interceptError: residualDeviation * Math.sqrt(1 / n + (meanX * meanX) / sumXX),
    slopeError: residualDeviation / Math.sqrt(sumXX),
    residualDeviation,
    residualSum,
    degrees,
    meanX,
    meanY,
    sumXX,
    rSquared: 1 - residualSum / total,
    f: (slope * slope * sumXX) / (residualSum / degrees),
  };
}

/** A line through the origin. R² is about 0 here, not about the mean. */
export interface LineThroughOrigin {
  readonly slope: number;
  readonly slopeError: number;
  readonly residualDeviation: number;
  readonly rSquared: number;
}

/** Fits y = slope·x. Throws a RangeError as fitLine does. */
export function fitThroughOrigin(x: readonly number[], y: readonly number[]): LineThroughOrigin {
  if (x.length !== y.length || x.length < 2)
    throw new RangeError(`${x.length} values of x against ${y.length} of y`);
  const sumXX = compensatedSum(x.map((value) => value * value));
  if (!(sumXX > 0)) throw new RangeError('all points lie at x = 0');
  const slope = compensatedSum(x.map((value, i) => value * y[i]!)) / sumXX;
  const residualSum = compensatedSum(x.map((value, i) => (y[i]! - slope * value) ** 2));
  const residualDeviation = Math.sqrt(residualSum / (x.length - 1));
  return {
    slope,
    slopeError: residualDeviation / Math.sqrt(sumXX),
    residualDeviation,
    rSquared: 1 - residualSum / compensatedSum(y.map((value) => value * value)),
  };
}
