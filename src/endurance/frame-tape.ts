import { type EventKind, type EventSums, EventTally } from './event-tally.ts';
import type { ChannelSums, ConditionSums, Frame, RowMark } from './frame.ts';

/**
 * Frames as numbers in a row: what a thread hands over without a copy, and little of it. Written and read place by place,
 * since what goes through closures takes the engine longer to compile than the work itself.
 */
export interface FrameTape {
  readonly numbers: Float64Array;
  readonly states: readonly string[];
  /** Events by the place of their frame, for the few that have any. */
  readonly events: readonly (readonly [number, readonly (readonly [EventKind, EventSums])[]])[];
}

const HEAD = 10;
/** Before the columns of a mark. */
export const MARK = 3;
const CHANNEL = 9;
const CONDITION = 6;

/** Writes the frames of one part; each stands in one stretch of its file. */
export function writeTape(frames: readonly Frame[]): FrameTape {
  const length = frames.reduce((sum, frame) => sum + sizeOf(frame), 0);
  const numbers = new Float64Array(length);
  const states = [...new Set(frames.map(({ state }) => state))];
  const events: [number, [EventKind, EventSums][]][] = [];
  let at = 0;
  for (const [place, frame] of frames.entries()) {
    const { from, to } = frame.ranges[0]!;
    numbers[at] = frame.minute;
    numbers[at + 1] = states.indexOf(frame.state);
    numbers[at + 2] = from;
    numbers[at + 3] = to;
    numbers[at + 4] = frame.rows;
    numbers[at + 5] = frame.time;
    numbers[at + 6] = frame.integral;
    numbers[at + 7] = frame.standing;
    numbers[at + 8] = frame.unverified;
    numbers[at + 9] = frame.conditions.length;
    at = writeMark(numbers, at + HEAD, frame.first);
    at = writeMark(numbers, at, frame.last);
    for (const sums of frame.channels) at = writeChannel(numbers, at, sums);
    for (const sums of frame.conditions) at = writeCondition(numbers, at, sums);
    if (frame.events) events.push([place, [...frame.events.byKind]]);
  }
  return { numbers, states, events };
}

/**
 * Reads the frames back, as those of file `file` whose first line of the part is line `lines`.
 *
 * @param columns number of numeric columns, and of channels among them
 */
export function* readTape(
  { numbers, states, events }: FrameTape,
  columns: { readonly columns: number; readonly channels: number },
  file: number,
  lines: number,
): Generator<Frame> {
  const eventful = new Map(events);
  const widthOfMark = MARK + columns.columns;
  let at = 0;
  for (let place = 0; at < numbers.length; place++) {
    const begin = at;
    const first = readMark(numbers, begin + HEAD, columns.columns, lines);
    const last = readMark(numbers, begin + HEAD + widthOfMark, columns.columns, lines);
    at += HEAD + 2 * widthOfMark;
    const channels: ChannelSums[] = [];
    for (let c = 0; c < columns.channels; c++, at += CHANNEL) channels.push(readChannel(numbers, at));
    const conditions: ConditionSums[] = [];
    for (let c = numbers[begin + 9]!; c > 0; c--, at += CONDITION) {
      conditions.push(readCondition(numbers, at, lines));
    }
    const kinds = eventful.get(place);
    yield {
      minute: numbers[begin]!,
      state: states[numbers[begin + 1]!]!,
      ranges: [{ file, from: numbers[begin + 2]!, to: numbers[begin + 3]!, line: first.line }],
      rows: numbers[begin + 4]!,
      first,
      last,
      channels,
      conditions,
      time: numbers[begin + 5]!,
      integral: numbers[begin + 6]!,
      standing: numbers[begin + 7]!,
      unverified: numbers[begin + 8]!,
      events: kinds ? new EventTally(kinds).moved(file, lines) : null,
    };
  }
}

/** Numbers in a row, to be written place by place. */
type Row = Float64Array | number[];

/** @returns the place behind it, as the writers below do */
export function writeMark(numbers: Row, at: number, { time, line, condition, columns }: RowMark): number {
  numbers[at] = time;
  numbers[at + 1] = line;
  numbers[at + 2] = condition;
  for (let c = 0; c < columns.length; c++) numbers[at + MARK + c] = columns[c]!;
  return at + MARK + columns.length;
}

export function writeChannel(numbers: Row, at: number, sums: ChannelSums): number {
  numbers[at] = sums.count;
  numbers[at + 1] = sums.missing;
  numbers[at + 2] = sums.sum;
  numbers[at + 3] = sums.squares;
  numbers[at + 4] = sums.min;
  numbers[at + 5] = sums.max;
  numbers[at + 6] = sums.atMax;
  numbers[at + 7] = sums.first;
  numbers[at + 8] = sums.last;
  return at + CHANNEL;
}

export function writeCondition(numbers: Row, at: number, sums: ConditionSums): number {
  numbers[at] = sums.condition;
  numbers[at + 1] = sums.rows;
  numbers[at + 2] = sums.time;
  numbers[at + 3] = sums.distance;
  numbers[at + 4] = sums.firstLine;
  numbers[at + 5] = sums.lastLine;
  return at + CONDITION;
}

/**
 * @param width number of columns
 * @param lines added to the line, as for the conditions
 */
export function readMark(numbers: Row, at: number, width: number, lines: number): RowMark {
  const columns: number[] = [];
  for (let c = 0; c < width; c++) columns.push(numbers[at + MARK + c]!);
  return { time: numbers[at]!, line: numbers[at + 1]! + lines, condition: numbers[at + 2]!, columns };
}

export function readChannel(numbers: Row, at: number): ChannelSums {
  return {
    count: numbers[at]!,
    missing: numbers[at + 1]!,
    sum: numbers[at + 2]!,
    squares: numbers[at + 3]!,
    min: numbers[at + 4]!,
    max: numbers[at + 5]!,
    atMax: numbers[at + 6]!,
    first: numbers[at + 7]!,
    last: numbers[at + 8]!,
  };
}

export function readCondition(numbers: Row, at: number, lines: number): ConditionSums {
  return {
    condition: numbers[at]!,
    rows: numbers[at + 1]!,
    time: numbers[at + 2]!,
    distance: numbers[at + 3]!,
    firstLine: numbers[at + 4]! + lines,
    lastLine: numbers[at + 5]! + lines,
  };
}

function sizeOf(frame: Frame): number {
  const marks = 2 * (MARK + frame.first.columns.length);
  return HEAD + marks + CHANNEL * frame.channels.length + CONDITION * frame.conditions.length;
}
