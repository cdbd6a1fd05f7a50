import { limitChances, logChances } from './cells.ts';
import type { Drawn, Replicates } from './replicates.ts';

/** Ratio of neighbouring scales at which the restricted likelihood is looked at, and how many there are. */
const RATIO = 1.13;
const SCALES = 72;
const MIDDLE = SCALES >> 1;

/**
 * Writes the signed root of the likelihood-ratio statistic of every replicate for a share p failed at y (fitted scale):
 * positive where the replicate's own quantile lies above y.
 */
export type SignedRoots = (tests: Replicates, y: number, p: number, into: Float64Array) => void;

/**
 * Finds the best scale on the line of laws through (y, p) on a grid of scales about the step and refines it by a
 * parabola: the likelihood has one top on the line, so that climbing finds it from anywhere, here from the replicate's
 * own scale.
 *
 * @param step the distance of neighbouring levels
 */
export function signedRoots({ cells, table }: Drawn, step: number): SignedRoots {
  const kinds = cells.lower.length;
  const rows = new Float64Array((SCALES + 2) * kinds);
  const isFilled = new Uint8Array(SCALES + 2);

  function fill(row: number, { first, last }: Replicates, y: number, p: number, z: number): void {
    const at = row * kinds;
    isFilled[row] = 1;
    if (row === 0) limitChances(cells, y, p, 'zero', first, last, rows, at);
    else if (row === SCALES + 1) limitChances(cells, y, p, 'infinite', first, last, rows, at);
    else {
      const s = step * RATIO ** (row - MIDDLE);
      logChances(table, cells, { location: y - z * s, scale: s }, first, last, rows, at);
    }
  }

  return (tests, y, p, into) => {
    const { size, start, cell, count, supremum, location, scale, turn } = tests;
    const z = table.law.quantile(p);
    isFilled.fill(0);
    for (let t = 0; t < size; t++) {
      const from = start[t]!;
      const end = start[t + 1]!;
      let row = rowOf(scale[t]! / step);
      let here = Number.NaN;
      let before = Number.NaN;
      let after = Number.NaN;
      // Upwards until it falls; unless it had risen, then downwards until it falls.
      for (let move = 0; ; ) {
        const wanted = Number.isNaN(here) ? row : move >= 0 ? row + 1 : row - 1;
        let value = -Infinity;
        if (wanted >= 0 && wanted <= SCALES + 1) {
          if (isFilled[wanted] === 0) fill(wanted, tests, y, p, z);
          const base = wanted * kinds;
          value = 0;
          for (let e = from; e < end; e++) value += count[e]! * rows[base + cell[e]!]!;
        }
        if (Number.isNaN(here)) here = value;
        else if (value > here) {
          if (wanted > row) before = here;
          else after = here;
          move = wanted > row ? 1 : -1;
          here = value;
          row = wanted;
        } else if (wanted > row) {
          after = value;
          if (move > 0) break;
          move = -1;
        } else {
          before = value;
          break;
        }
      }
      // A parabola through three scales; the limits have no neighbour at a distance.
      if (row > 1 && row < SCALES) {
        const curvature = before - 2 * here + after;
        if (curvature < 0) here -= (0.125 * (after - before) * (after - before)) / curvature;
      }
      const ratio = Math.sqrt(Math.max(0, 2 * (supremum[t]! - here)));
      const quantile = location[t]! + scale[t]! * z;
      const isAbove = Number.isNaN(quantile) ? z > turn[t]! : quantile > y;
      into[t] = isAbove ? ratio : -ratio;
    }
  };
}

/** The row nearest to a scale, in steps; the middle one where there is no scale. */
function rowOf(scale: number): number {
  const row = scale > 0 ? Math.round(Math.log(scale) / Math.log(RATIO)) + MIDDLE : MIDDLE;
  return Math.min(Math.max(row, 1), SCALES);
}
