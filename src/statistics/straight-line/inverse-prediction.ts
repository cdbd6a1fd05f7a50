import { studentLaw } from '../laws/student.ts';
import type { Limits } from '../likelihood/wald.ts';
import type { Line } from './fit.ts';

/** Where a line reaches a level. */
export interface Crossing extends Limits {
  readonly value: number;
  /** Large-sample standard error (delta method). */
  readonly standardError: number;
  /** g = (t·s/slope)²/Sxx: at 1 and above the slope itself is not told from 0 and the interval has no two ends. */
  readonly g: number;
  /** `unbounded` where g ≥ 1: both ends are null. */
  readonly kind: 'bounded' | 'unbounded';
}

/**
 * The x at which a line reaches y₀, by inversion of the t interval (Fieller 1954; Graybill & Iyer 1994).
 *
 * @param of what reaches it: the `mean-line` (when does the mean depth meet the limit), or a new `reading` at it, which scatters by
 *   itself (calibration of a gauge)
 * @param level two-sided
 * @throws RangeError for fewer than three points or a slope of 0
 */
export function inversePrediction(
  line: Line,
  y0: number,
  of: 'mean-line' | 'reading',
  level: number,
): Crossing {
  const { slope, meanX, meanY, sumXX, n, degrees, residualDeviation: s } = line;
  if (!(degrees >= 1)) throw new RangeError('an interval needs three points or more');
  if (slope === 0) throw new RangeError('a level line reaches no other level');
  const t = studentLaw(degrees).quantileOfSf(0.5 * (1 - level));
  const g = ((t * s) / slope) ** 2 / sumXX;
  const away = (y0 - meanY) / slope;
  const own = (of === 'reading' ? 1 : 0) + 1 / n;
  const value = meanX + away;
  const standardError = (s / Math.abs(slope)) * Math.sqrt(own + (away * away) / sumXX);
  const base = { value, standardError, g };
  if (!(g < 1)) return { ...base, kind: 'unbounded', lower: null, upper: null };
  const half = ((t * s) / Math.abs(slope)) * Math.sqrt((away * away) / sumXX + (1 - g) * own);
  const lower = meanX + (away - half) / (1 - g);
  const upper = meanX + (away + half) / (1 - g);
  return { ...base, kind: 'bounded', lower, upper };
}
