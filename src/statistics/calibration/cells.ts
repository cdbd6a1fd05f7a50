import { logIntervalProbability } from '../laws/interval.ts';
import type { StandardLaw } from '../laws/standard-law.ts';
import type { Experiment, Trials } from './experiment.ts';

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

/** Writes log P(cell) for the cells from `first` to `last` into a row. */
export function logChances(
  law: StandardLaw,
  { lower, upper }: Cells,
  chances: { location: number; scale: number },
  first: number,
  last: number,
  into: Float64Array,
): void {
  const { location, scale } = chances;
  for (let cell = first; cell <= last; cell++) {
    const value = logIntervalProbability(
      law,
      (lower[cell]! - location) / scale,
      (upper[cell]! - location) / scale,
    );
    into[cell] = Math.max(IMPOSSIBLE, value);
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
): void {
  for (let cell = first; cell <= last; cell++) {
    const open = lower[cell] === -Infinity || upper[cell] === Infinity;
    if (scale === 'zero') into[cell] = lower[cell]! < y && y <= upper[cell]! ? 0 : IMPOSSIBLE;
    else if (!open) into[cell] = IMPOSSIBLE;
    else into[cell] = Math.log(lower[cell] === -Infinity ? p : 1 - p);
  }
}
