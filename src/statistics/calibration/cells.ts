import type { Experiment, Trials } from './experiment.ts';
import { type LawTable, tailValue } from './law-table.ts';

/**
 * Everything that one observation of an experiment can say, as a numbered list of cells (lower, upper] on the fitted
 * scale. Hits: cell 2·level for a survival, 2·level + 1 for a failure. Rises: cell j between levels j − 1 and j, open
 * at both ends of the list.
 */
export interface Cells {
  readonly lower: Float64Array;
  readonly upper: Float64Array;
}

export function cellsOf({ levels, reading }: Experiment): Cells {
  const size = levels.length;
  if (reading === 'rises') {
    const lower = Float64Array.of(-Infinity, ...levels);
    const upper = Float64Array.of(...levels, Infinity);
    return { lower, upper };
  }
  const lower = new Float64Array(2 * size).fill(-Infinity);
  const upper = new Float64Array(2 * size).fill(Infinity);
  levels.forEach((level, index) => {
    lower[2 * index] = level;
    upper[2 * index + 1] = level;
  });
  return { lower, upper };
}

/** Calls `visit` with the cell of each observation of a test. */
export function visitCells(
  trials: Trials,
  reading: Experiment['reading'],
  visit: (cell: number) => void,
): void {
  const { size, level, failed, specimen } = trials;
  for (let i = 0; i < size; i++) {
    if (reading === 'hits') visit(2 * level[i]! + failed[i]!);
    else if (failed[i]) visit(level[i]!);
    else if (i + 1 === size || specimen[i + 1] !== specimen[i]) visit(level[i]! + 1);
  }
}

/** Stands for the logarithm of an impossible cell, so that 0 of them are 0. */
const IMPOSSIBLE = -1e9;

/** Writes log P(cell) for the cells from `first` to `last` into `into`, from place `at` on for cell 0. */
export function logChances(
  { cdf, sf }: LawTable,
  { lower, upper }: Cells,
  { location, scale }: { location: number; scale: number },
  first: number,
  last: number,
  into: Float64Array,
  at: number,
): void {
  for (let cell = first; cell <= last; cell++) {
    const low = (lower[cell]! - location) / scale;
    const high = (upper[cell]! - location) / scale;
    let value: number;
    if (low === -Infinity) value = tailValue(cdf, high);
    else if (high === Infinity) value = tailValue(sf, low);
    else {
      // In the tail where the difference does not cancel.
      const isLow = low + high < 0;
      const near = isLow ? tailValue(cdf, high) : tailValue(sf, low);
      const far = isLow ? tailValue(cdf, low) : tailValue(sf, high);
      value = near + Math.log(-Math.expm1(far - near));
    }
    into[at + cell] = Math.max(value, IMPOSSIBLE);
  }
}

/** The limits of the line of laws through a share p at y: scale 0 (a threshold at y) and scale ∞ (p at every level). */
export function limitChances(
  { lower, upper }: Cells,
  y: number,
  p: number,
  scale: 'zero' | 'infinite',
  first: number,
  last: number,
  into: Float64Array,
  at: number,
): void {
  for (let cell = first; cell <= last; cell++) {
    const open = lower[cell] === -Infinity || upper[cell] === Infinity;
    let value = IMPOSSIBLE;
    if (scale === 'zero') {
      if (lower[cell]! < y && y <= upper[cell]!) value = 0;
    } else if (open) value = Math.log(lower[cell] === -Infinity ? p : 1 - p);
    into[at + cell] = value;
  }
}
