import { gatherObservations, type Observation, type Sample } from '../likelihood/observation.ts';

/** Observations that share a row of the design and a group of spread. */
export interface Cell {
  readonly row: Float64Array;
  readonly group: number;
  readonly sample: Sample;
}

/** Observations put together by their row and group, on the fitted scale; the likelihood sums each cell in one go. */
export function gatherCells(
  observations: readonly Observation[],
  rows: readonly Float64Array[],
  groups: readonly number[],
  scale: 'identity' | 'log',
): Cell[] {
  const members = new Map<string, number[]>();
  for (const [i, row] of rows.entries()) {
    const key = `${groups[i]} ${row.join(' ')}`;
    const list = members.get(key);
    if (list === undefined) members.set(key, [i]);
    else list.push(i);
  }
  return [...members.values()].map((list) => ({
    row: rows[list[0]!]!,
    group: groups[list[0]!]!,
    sample: gatherObservations(
      list.map((i) => observations[i]!),
      scale,
    ),
  }));
}
