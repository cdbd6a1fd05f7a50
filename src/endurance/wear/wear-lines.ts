import type { WearLine } from '../../result/report.ts';
import { studentLaw } from '../../statistics/laws/student.ts';
import { fitLine } from '../../statistics/straight-line/fit.ts';
import type { TyreWear } from './wear-readings.ts';

/** Readings at fewer distances make no line with an interval. */
const FEWEST = 3;
const POINTS = 31;
/** A tread that hardly wears would meet its limit off every picture: so many times the longest distance read. */
const FARTHEST = 5;

/**
 * Least-squares lines through the readings of each tyre with the pointwise t interval of the line,
 * depth ± t·s·√(1/n + (x − mean)²/Sxx) (Graybill & Iyer 1994), from the start to where its tread meets the limit, or to
 * the longest distance read.
 *
 * @param limit mm; null where there is none
 * @param level of the interval, two-sided
 */
export function wearLines(wear: readonly TyreWear[], limit: number | null, level: number): WearLine[] {
  return wear
    .filter(({ readings }) => readings.length >= FEWEST)
    .map(({ specimen, readings }) => {
      const { slope, intercept, n, residualDeviation, meanX, sumXX, degrees } = fitLine(
        readings.map(({ distance }) => distance),
        readings.map(({ depth }) => depth),
      );
      const read = readings.at(-1)!.distance;
      const meets = limit !== null && slope < 0 ? (limit - intercept) / slope : read;
      const end = Math.min(FARTHEST * read, Math.max(read, meets));
      const t = studentLaw(degrees).quantileOfSf((1 - level) / 2);
      return {
        specimen,
        points: Array.from({ length: POINTS }, (_, i) => {
          const distance = (i / (POINTS - 1)) * end;
          const depth = intercept + slope * distance;
          const half = t * residualDeviation * Math.sqrt(1 / n + (distance - meanX) ** 2 / sumXX);
          return { distance, depth, lower: depth - half, upper: depth + half };
        }),
      };
    });
}
