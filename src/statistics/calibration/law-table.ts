import type { StandardLaw } from '../laws/standard-law.ts';

/** log F or log S at points a sixteenth apart, with first and second derivatives: what Newton's method asks for. */
export interface TailTable {
  readonly value: Float64Array;
  readonly slope: Float64Array;
  readonly curvature: Float64Array;
}

/** Both tails of a standard law by table: for simulated tests, whose likelihood need not be known to the last digit. */
export interface LawTable {
  readonly law: StandardLaw;
  readonly cdf: TailTable;
  readonly sf: TailTable;
}

/** A point of a tail. */
export interface TailPoint {
  value: number;
  slope: number;
  curvature: number;
}

const REACH = 12;
const PER_UNIT = 16;
const LAST = 2 * REACH * PER_UNIT;

const known = new Map<StandardLaw, LawTable>();

/** The table of a law, made once. */
export function lawTable(law: StandardLaw): LawTable {
  const found = known.get(law);
  if (found !== undefined) return found;
  const made = {
    law,
    cdf: tabulate((z, into) => law.logCdfTerm(z, into)),
    sf: tabulate((z, into) => law.logSfTerm(z, into)),
  };
  known.set(law, made);
  return made;
}

/**
 * A tail at z by the cubic through values and slopes of two neighbours (and the slope by that through slopes and
 * curvatures): within 1e-7 for all three laws. Beyond 12 the last point's curvature goes on.
 */
export function tailAt({ value, slope, curvature }: TailTable, z: number, into: TailPoint): void {
  const place = (z + REACH) * PER_UNIT;
  if (!(place >= 0 && place < LAST)) {
    const end = place < 0 ? 0 : LAST;
    const off = z - (end / PER_UNIT - REACH);
    into.value = value[end]! + off * (slope[end]! + 0.5 * off * curvature[end]!);
    into.slope = slope[end]! + off * curvature[end]!;
    into.curvature = curvature[end]!;
    return;
  }
  const k = Math.floor(place);
  const u = place - k;
  into.value = cubic(u, value[k]!, value[k + 1]!, slope[k]! / PER_UNIT, slope[k + 1]! / PER_UNIT);
  into.slope = cubic(u, slope[k]!, slope[k + 1]!, curvature[k]! / PER_UNIT, curvature[k + 1]! / PER_UNIT);
  into.curvature = curvature[k]! + u * (curvature[k + 1]! - curvature[k]!);
}

/** The value of a tail alone. */
export function tailValue({ value, slope, curvature }: TailTable, z: number): number {
  const place = (z + REACH) * PER_UNIT;
  if (!(place >= 0 && place < LAST)) {
    const end = place < 0 ? 0 : LAST;
    const off = z - (end / PER_UNIT - REACH);
    return value[end]! + off * (slope[end]! + 0.5 * off * curvature[end]!);
  }
  const k = Math.floor(place);
  return cubic(place - k, value[k]!, value[k + 1]!, slope[k]! / PER_UNIT, slope[k + 1]! / PER_UNIT);
}

/** Hermite's cubic between two values with their slopes. */
function cubic(u: number, from: number, to: number, fromSlope: number, toSlope: number): number {
  const rise = to - from;
  return (
    from + u * (fromSlope + u * (3 * rise - 2 * fromSlope - toSlope + u * (fromSlope + toSlope - 2 * rise)))
  );
}

function tabulate(at: (z: number, into: TailPoint) => void): TailTable {
  const table = {
    value: new Float64Array(LAST + 1),
    slope: new Float64Array(LAST + 1),
    curvature: new Float64Array(LAST + 1),
  };
  const point = { value: 0, slope: 0, curvature: 0 };
  for (let k = 0; k <= LAST; k++) {
    at(k / PER_UNIT - REACH, point);
    table.value[k] = point.value;
    table.slope[k] = point.slope;
    table.curvature[k] = point.curvature;
  }
  return table;
}
