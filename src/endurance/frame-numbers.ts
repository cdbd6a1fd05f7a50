import { type EventKind, type EventSums, EventTally, type LogEvent } from './event-tally.ts';
import type { Frame, RowMark } from './frame.ts';
import {
  MARK,
  readChannel,
  readCondition,
  readMark,
  writeChannel,
  writeCondition,
  writeMark,
} from './frame-tape.ts';

/** A number as JSON can hold it: what is none stands as its name. */
type Told = number | string;

/** A whole minute as plain data, exact: what a file holds of it, and what is put together with others again. */
export interface StoredFrame {
  /** Minute, first and last byte, line, shift, time, integral, standing, unverified. */
  readonly frame: readonly Told[];
  readonly first: readonly Told[];
  readonly last: readonly Told[];
  readonly channels: readonly (readonly Told[])[];
  readonly conditions: readonly (readonly Told[])[];
  readonly events?: readonly (readonly [EventKind, StoredEvents])[];
}

interface StoredEvents {
  readonly sums: readonly Told[];
  readonly last: readonly Told[];
  readonly listed: readonly (readonly Told[])[];
}

/** Conditions and kinds of events stand in one order, whichever half of the minute had them first. */
export function numbersOfFrame(frame: Frame): StoredFrame {
  const { minute, ranges, time, integral, standing, unverified, channels, conditions, events } = frame;
  const { from, line, shift = 0 } = ranges[0]!;
  const { to } = ranges.at(-1)!;
  return {
    frame: told([minute, from, to, line, shift, time, integral, standing, unverified]),
    first: written(writeMark, frame.first),
    last: written(writeMark, frame.last),
    channels: channels.map((sums) => written(writeChannel, sums)),
    conditions: conditions
      .toSorted((a, b) => a.condition - b.condition)
      .map((sums) => written(writeCondition, sums)),
    ...(events
      ? {
          events: [...events.byKind]
            .sort(([a], [b]) => (a < b ? -1 : 1))
            .map(([kind, sums]) => [kind, eventNumbers(sums)] as const),
        }
      : {}),
  };
}

/** @param file place of the log among the logs */
export function frameOfNumbers(stored: StoredFrame, state: string, rows: number, file: number): Frame {
  const [minute, from, to, line, shift, time, integral, standing, unverified] = meant(stored.frame);
  const range = { file, from: from!, to: to!, line: line! };
  return {
    minute: minute!,
    state,
    ranges: [shift === 0 ? range : { ...range, shift: shift! }],
    rows,
    first: markOf(stored.first),
    last: markOf(stored.last),
    channels: stored.channels.map((sums) => readChannel(meant(sums), 0)),
    conditions: stored.conditions.map((sums) => readCondition(meant(sums), 0, 0)),
    time: time!,
    integral: integral!,
    standing: standing!,
    unverified: unverified!,
    events: stored.events
      ? new EventTally(stored.events.map(([kind, sums]) => [kind, eventsOf(kind, sums, file)] as const))
      : null,
  };
}

function told(numbers: readonly number[]): Told[] {
  return numbers.map((value) => (Number.isFinite(value) ? value : String(value)));
}

/** `NaN` and `Infinity` by name; a file that holds anything else would not have passed its hash. */
function meant(numbers: readonly Told[]): number[] {
  return numbers.map(Number);
}

/** As on a tape (`writeTape`), in a row of its own. */
function written<Sums>(write: (numbers: number[], at: number, sums: Sums) => number, sums: Sums): Told[] {
  const numbers: number[] = [];
  write(numbers, 0, sums);
  return told(numbers);
}

function markOf(stored: readonly Told[]): RowMark {
  return readMark(meant(stored), 0, stored.length - MARK, 0);
}

function eventNumbers({ count, gained, time, last, listed }: EventSums): StoredEvents {
  const numbers = (event: LogEvent) => told([event.line, event.from, event.to, event.gained]);
  return { sums: told([count, gained, time]), last: numbers(last), listed: listed.map(numbers) };
}

function eventsOf(kind: EventKind, { sums, last, listed }: StoredEvents, file: number): EventSums {
  const [count, gained, time] = meant(sums);
  const event = (numbers: readonly Told[]): LogEvent => {
    const [line, from, to, by] = meant(numbers);
    return { kind, file, line: line!, from: from!, to: to!, gained: by! };
  };
  return { count: count!, gained: gained!, time: time!, last: event(last), listed: listed.map(event) };
}
