import { type EventKind, type EventSums, EventTally } from './event-tally.ts';
import type { ChannelSums, ConditionSums, Frame, RowMark } from './frame.ts';

/** Frames as numbers in a row: what a thread hands over without a copy, and little of it. */
export interface FrameTape {
  readonly numbers: Float64Array;
  readonly states: readonly string[];
  /** Events by the place of their frame, for the few that have any. */
  readonly events: readonly (readonly [number, readonly (readonly [EventKind, EventSums])[]])[];
}

const HEAD = 10;
const MARK = 3;
const CHANNEL = 9;
const CONDITION = 6;

/** Writes the frames of one part; each stands in one stretch of its file. */
export function writeTape(frames: readonly Frame[]): FrameTape {
  const length = frames.reduce((sum, frame) => sum + sizeOf(frame), 0);
  const numbers = new Float64Array(length);
  const states = [...new Set(frames.map(({ state }) => state))];
  const events: [number, [EventKind, EventSums][]][] = [];
  let at = 0;
  const put = (...values: readonly number[]): void => {
    for (const value of values) numbers[at++] = value;
  };
  for (const [place, frame] of frames.entries()) {
    const { from, to } = frame.ranges[0]!;
    put(frame.minute, states.indexOf(frame.state), from, to, frame.rows, frame.time, frame.integral);
    put(frame.standing, frame.unverified, frame.conditions.length);
    for (const mark of [frame.first, frame.last]) {
      put(mark.time, mark.line, mark.condition, ...mark.columns);
    }
    for (const sums of frame.channels) {
      put(
        sums.count,
        sums.missing,
        sums.sum,
        sums.squares,
        sums.min,
        sums.max,
        sums.atMax,
        sums.first,
        sums.last,
      );
    }
    for (const sums of frame.conditions) {
      put(sums.condition, sums.rows, sums.time, sums.distance, sums.firstLine, sums.lastLine);
    }
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
  let at = 0;
  const next = (): number => numbers[at++]!;
  const mark = (): RowMark => {
    const [time, line, condition] = [next(), next() + lines, next()];
    return { time, line, condition, columns: Array.from({ length: columns.columns }, next) };
  };
  const channel = (): ChannelSums => ({
    count: next(),
    missing: next(),
    sum: next(),
    squares: next(),
    min: next(),
    max: next(),
    atMax: next(),
    first: next(),
    last: next(),
  });
  const condition = (): ConditionSums => ({
    condition: next(),
    rows: next(),
    time: next(),
    distance: next(),
    firstLine: next() + lines,
    lastLine: next() + lines,
  });
  const eventful = new Map(events);
  for (let place = 0; at < numbers.length; place++) {
    const [minute, state, from, to, rows] = [next(), states[next()]!, next(), next(), next()];
    const [time, integral, standing, unverified, conditions] = [next(), next(), next(), next(), next()];
    const first = mark();
    const last = mark();
    const channels = Array.from({ length: columns.channels }, channel);
    const kinds = eventful.get(place);
    yield {
      minute,
      state,
      ranges: [{ file, from, to, line: first.line }],
      rows,
      first,
      last,
      channels,
      conditions: Array.from({ length: conditions }, condition),
      time,
      integral,
      standing,
      unverified,
      events: kinds ? new EventTally(kinds).moved(file, lines) : null,
    };
  }
}

function sizeOf(frame: Frame): number {
  const marks = 2 * (MARK + frame.first.columns.length);
  return HEAD + marks + CHANNEL * frame.channels.length + CONDITION * frame.conditions.length;
}
