import type { StandardLaw } from '../laws/standard-law.ts';
import { limitChances, logChances } from './cells.ts';
import type { Replicates } from './replicates.ts';

/** Ratio of neighbouring scales at which the restricted likelihood is looked at, and how many there are. */
const RATIO = 1.13;
const SCALES = 56;
/** Scales that are skipped while the top is far. */
const STRIDE = 4;

/**
 * The likelihood-ratio statistic of every replicate for a share p failed at y, with its sign: positive where the
 * replicate's own quantile lies above y. The best scale on the line of laws through (y, p) is sought on a grid of
 * scales and refined by a parabola; the likelihood has one top on the line, so that climbing from the middle finds it.
 *
 * @param middle a scale near which the best one is expected
 */
export function signedRoots(
  drawn: Replicates,
  law: StandardLaw,
  y: number,
  p: number,
  middle: number,
  into: Float64Array,
): void {
  const { cells, first, last, start, cell, count, size, supremum, location, scale, turn } = drawn;
  const z = law.quantile(p);
  const rows: (Float64Array | null)[] = new Array(SCALES + 2).fill(null);
  const middleRow = SCALES >> 1;
  const rowAt = (k: number): Float64Array => {
    const known = rows[k];
    if (known) return known;
    const row = new Float64Array(cells.lower.length);
    if (k === 0) limitChances(cells, y, p, 'zero', first, last, row);
    else if (k === SCALES + 1) limitChances(cells, y, p, 'infinite', first, last, row);
    else {
      const s = middle * RATIO ** (k - middleRow);
      logChances(law, cells, { location: y - z * s, scale: s }, first, last, row);
    }
    rows[k] = row;
    return row;
  };
  for (let t = 0; t < size; t++) {
    const from = start[t]!;
    const end = start[t + 1]!;
    const at = (k: number): number => {
      const row = rowAt(k);
      let sum = 0;
      for (let e = from; e < end; e++) sum += count[e]! * row[cell[e]!]!;
      return sum;
    };
    let k = climb(at, middleRow, STRIDE);
    k = climb(at, k, 1);
    let here = at(k);
    const below = k > 0 ? at(k - 1) : -Infinity;
    const above = k <= SCALES ? at(k + 1) : -Infinity;
    // A parabola through three scales; the limits have no neighbour at a distance.
    if (k > 1 && k < SCALES) {
      const curvature = below - 2 * here + above;
      if (curvature < 0) here -= (0.125 * (above - below) * (above - below)) / curvature;
    }
    const ratio = Math.sqrt(Math.max(0, 2 * (supremum[t]! - here)));
    const quantile = location[t]! + scale[t]! * z;
    const isAbove = Number.isNaN(quantile) ? z > turn[t]! : quantile > y;
    into[t] = isAbove ? ratio : -ratio;
  }
}

/** The row at which a function with one top is largest, among those a stride apart; the limits at both ends included. */
function climb(at: (row: number) => number, from: number, stride: number): number {
  let row = from;
  let here = at(row);
  for (const step of [stride, -stride]) {
    for (;;) {
      const next = Math.min(Math.max(row + step, 0), SCALES + 1);
      if (next === row) break;
      const value = at(next);
      if (value <= here) break;
      row = next;
      here = value;
    }
    if (row !== from) break;
  }
  return row;
}
