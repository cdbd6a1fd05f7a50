import { InputError } from '../../problem/problem.ts';
import type { ChartKind, Limits } from '../../result/monitor.ts';
import { individualsLimits } from '../../statistics/control-chart/individuals.ts';
import {
  meanRangeLimits,
  meanSpreadLimits,
  rangeOf,
  standardDeviationOf,
} from '../../statistics/control-chart/subgroups.ts';
import { mean } from '../../statistics/summary/moments.ts';
import type { Occasion } from './occasions.ts';

/** The limits of a pair of charts, and how a point is drawn on them. */
export interface PairOfCharts {
  readonly kind: ChartKind;
  readonly value: Limits;
  readonly spread: Limits;
  /** Standard deviation of a point. */
  readonly sigma: number;
  /** Of a point; the moving range needs the one before it. */
  spreadOf(occasion: Occasion, before: Occasion | null): number | null;
}

/** From here on a range wastes what the standard deviation keeps (Montgomery, chapter 6: more than 10 or 12). */
const WIDE_SUBGROUP = 10;

/**
 * Limits from the base period for one of the pairs of charts. Where none is asked for: single readings on individuals and moving
 * range, small subgroups on mean and range, those of 10 and more on mean and standard deviation.
 *
 * @throws InputError for a base period without spread, or a chart that the readings do not fill
 */
export function chartLimits(base: readonly Occasion[], asked: ChartKind | null): PairOfCharts {
  const size = base[0]!.values.length;
  const kind = asked ?? (size === 1 ? 'individuals' : size < WIDE_SUBGROUP ? 'mean-range' : 'mean-spread');
  if (kind !== 'individuals' && size === 1) {
    const message = `found one reading on each occasion, expected two or more for the chart ${kind}; name what was read together in a column "occasion", or take --chart individuals`;
    throw problem(base, 'no-subgroups', message);
  }
  try {
    if (kind === 'individuals') {
      const found = individualsLimits(base.map(({ values }) => mean(values)));
      return {
        kind,
        value: found.individuals,
        spread: found.movingRange,
        sigma: found.sigma,
        spreadOf: ({ values }, before) =>
          before === null ? null : Math.abs(mean(values) - mean(before.values)),
      };
    }
    const groups = base.map(({ values }) => values);
    const found = kind === 'mean-range' ? meanRangeLimits(groups) : meanSpreadLimits(groups);
    const spread = kind === 'mean-range' ? rangeOf : standardDeviationOf;
    return {
      kind,
      value: found.mean,
      spread: found.spread,
      sigma: found.sigma / Math.sqrt(size),
      spreadOf: ({ values }) => spread(values),
    };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const message = `found a base period from which no limits follow: ${error.message}; expected readings that scatter: note more digits, or name another period with --base`;
    throw problem(base, 'no-limits', message);
  }
}

function problem(base: readonly Occasion[], code: string, message: string): InputError {
  const { file, line } = base[0]!;
  return new InputError([{ file, line, column: null, code, message }]);
}
