import type { SampleBatch } from '../logs/samples/batch.ts';
import { EventTally, type LogEvent } from './event-tally.ts';
import type { Frame, RowMark } from './frame.ts';

/** A row that was taken out, and the place of the row that it repeats. */
export interface Repeat {
  readonly row: number;
  readonly event: LogEvent;
}

/**
 * Takes out of a batch the rows that repeat the one before in time, state and every value, as a buffer written
 * twice leaves them.
 *
 * @param open the frame of the batch before, whose last row the first of this batch may repeat; its repeats are
 *   noted in it
 * @returns the others, by their place
 */
export function dropRepeats(batch: SampleBatch, open: Frame | null): Repeat[] {
  const { time, rows } = batch;
  if (rows > 0 && open && isFirstRepeat(batch, open)) {
    let row = 0;
    open.events ??= new EventTally();
    do open.events.add(duplicate(batch, row++));
    while (row < rows && isRepeat(batch, row, 0));
    return compact(batch, row, -1);
  }
  for (let row = 1; row < rows; row++) {
    if (time[row] === time[row - 1] && isRepeat(batch, row, row - 1)) return compact(batch, row, row - 1);
  }
  return [];
}

/** Goes on from row `from`, with `last` as the last row kept, and closes the holes. */
function compact(batch: SampleBatch, from: number, last: number): Repeat[] {
  const repeats: Repeat[] = [];
  let kept = last;
  for (let row = from; row < batch.rows; row++) {
    if (kept >= 0 && isRepeat(batch, row, kept)) repeats.push({ row: kept, event: duplicate(batch, row) });
    else move(batch, row, ++kept);
  }
  batch.rows = kept + 1;
  return repeats;
}

function duplicate(batch: SampleBatch, row: number): LogEvent {
  const time = batch.time[row]!;
  return { kind: 'duplicate', file: 0, line: batch.line[row]!, from: time, to: time, gained: 0 };
}

function isRepeat(batch: SampleBatch, row: number, before: number): boolean {
  if (batch.time[row] !== batch.time[before] || batch.state[row] !== batch.state[before]) return false;
  return batch.values.every((column) => Object.is(column[row], column[before]));
}

function isFirstRepeat(batch: SampleBatch, { last, state }: Frame): boolean {
  if (batch.time[0] !== last.time || batch.states[batch.state[0]!] !== state) return false;
  return batch.values.every((column, k) => Object.is(column[0], last.columns[k]));
}

function move(batch: SampleBatch, from: number, to: number): void {
  if (from === to) return;
  for (const column of [batch.time, batch.line, batch.from, batch.to, batch.state, ...batch.values]) {
    column[to] = column[from]!;
  }
}

/** Whether two rows that stand in different frames are one row written twice. */
export function isSameRow(before: RowMark, row: RowMark): boolean {
  return before.time === row.time && before.columns.every((value, k) => Object.is(value, row.columns[k]));
}
