import type { Criterion } from '../../documents/kinds.ts';
import type { EnduranceEstimate } from '../../result/endurance.ts';
import { studentLaw } from '../../statistics/laws/student.ts';
import { fitLine } from '../../statistics/straight-line/fit.ts';
import { wearCrossing } from '../../statistics/wear/limit-crossing.ts';
import { type Evidence, withoutEvidence } from '../../verdict/evidence.ts';
import type { TyreWear } from './wear-readings.ts';

/** Readings at fewer distances make no line with an interval. */
const FEWEST = 3;

/** A rate of wear in mm per 1000 km, with what its interval is made of. */
interface Rate {
  readonly value: number;
  readonly standardError: number;
  readonly degrees: number;
  readonly tyres: number;
}

/**
 * The rate of wear: of one tyre that of its line; of several the mean of their lines, with the scatter between tyres, for
 * readings on one tyre are repeat looks at it.
 *
 * @returns null where no tyre has readings at three distances
 */
function wearRate(wear: readonly TyreWear[]): Rate | null {
  const lines = wear
    .filter(({ readings }) => readings.length >= FEWEST)
    .map(({ readings }) =>
      fitLine(
        readings.map(({ distance }) => distance),
        readings.map(({ depth }) => depth),
      ),
    );
  if (lines.length === 0) return null;
  const rates = lines.map(({ slope }) => -1000 * slope);
  if (lines.length === 1) {
    const { slopeError, degrees } = lines[0]!;
    return { value: rates[0]!, standardError: 1000 * slopeError, degrees, tyres: 1 };
  }
  const mean = rates.reduce((sum, rate) => sum + rate, 0) / rates.length;
  const squares = rates.reduce((sum, rate) => sum + (rate - mean) ** 2, 0);
  const degrees = rates.length - 1;
  return {
    value: mean,
    standardError: Math.sqrt(squares / degrees / rates.length),
    degrees,
    tyres: rates.length,
  };
}

/**
 * Wear rate, and of each tyre the distance at which its tread is down to the limit, with Fieller's interval.
 *
 * @param limit mm; null where the protocol sets none
 */
export function wearEstimates(
  wear: readonly TyreWear[],
  limit: number | null,
  confidence: number,
): EnduranceEstimate[] {
  if (wear.length === 0) return [];
  const base = { method: 'straight-line', specimens: wear.length, drops: 0 } as const;
  const rate = wearRate(wear);
  const few = `a line needs cold readings at ${FEWEST} distances or more on one tyre`;
  const headline: EnduranceEstimate = {
    ...base,
    quantity: 'wearRate',
    unit: 'mm/1000km',
    value: rate?.value ?? null,
    standardError: rate?.standardError ?? null,
    interval: rate && { level: confidence, sides: 2, ...limitsOf(rate, confidence, 2), method: 'student-t' },
    specimens: rate?.tyres ?? wear.length,
    why:
      rate === null
        ? few
        : rate.tyres === 1
          ? 'of one tyre: the interval is that of its line, and says nothing of other tyres'
          : 'mean over tyres, with the scatter between them',
  };
  if (limit === null) return [headline];
  return [headline, ...wear.map((tyre) => wearLife(tyre, limit, confidence))];
}

function wearLife({ specimen, readings }: TyreWear, limit: number, confidence: number): EnduranceEstimate {
  const base = {
    quantity: 'wearLife',
    method: 'straight-line',
    variant: `tyre ${specimen}`,
    unit: 'km',
    specimens: 1,
    drops: 0,
  } as const;
  const nothing = { ...base, value: null, standardError: null, interval: null };
  if (readings.length < FEWEST)
    return { ...nothing, why: `cold readings at ${readings.length} distances make no line with an interval` };
  const { crossing, extrapolation, why } = wearCrossing(readings, limit, 'mean-line', confidence);
  if (crossing === null)
    return { ...nothing, why: 'the depth does not fall with distance: no limit is in sight' };
  const { value, standardError, lower, upper } = crossing;
  const interval = { level: confidence, sides: 2, lower, upper, method: 'fieller' } as const;
  const far =
    extrapolation! > 1
      ? `${extrapolation!.toFixed(2)} times the longest distance read: an extrapolation`
      : null;
  const open =
    why === null ? null : 'the slope is not told from 0, so the distance to the limit is unbounded';
  return { ...base, value, standardError, interval, why: open ?? far };
}

function limitsOf({ value, standardError, degrees }: Rate, level: number, sides: 1 | 2) {
  const half = studentLaw(degrees).quantileOfSf((1 - level) / sides) * standardError;
  return { lower: value - half, upper: value + half };
}

/** What the inspections say about a criterion on the wear rate. */
export function wearEvidence({ confidence }: Criterion, wear: readonly TyreWear[]): Evidence {
  const rate = wearRate(wear);
  if (rate === null) return withoutEvidence('none', 'no tread depths at three distances or more were given');
  return {
    status: 'valid',
    estimate: rate.value,
    standardError: rate.standardError,
    ...limitsOf(rate, confidence, 1),
    method: 'straight-line',
    interval: 'student-t',
    specimens: rate.tyres,
    why: null,
  };
}
