import { EventTally } from './event-tally.ts';
import type { Link } from './link.ts';
import type { FoldChannel } from './plan.ts';

/** A row at the border of a frame: all that the link to its neighbour asks. */
export interface RowMark {
  /** Milliseconds. */
  readonly time: number;
  readonly line: number;
  /** Steps by the layout's columns (the channels, the counters); NaN where missing. */
  readonly columns: readonly number[];
  /** Number of the row's condition: see `FoldChannel.cuts`. */
  readonly condition: number;
}

/** One channel in one frame, in steps; sums are of the differences from the channel's reference. */
export interface ChannelSums {
  count: number;
  missing: number;
  sum: number;
  squares: number;
  /** ±Infinity without values. */
  min: number;
  max: number;
  /** How many values are exactly `max`. */
  atMax: number;
  first: number;
  last: number;
}

/** The rows of a frame that share one condition: the class of every channel, in one number. */
export interface ConditionSums {
  readonly condition: number;
  rows: number;
  /** Milliseconds. */
  time: number;
  /** Steps. */
  distance: number;
  firstLine: number;
  lastLine: number;
}

/** Bytes of a file, to read the rows of a frame again. */
export interface FrameRange {
  readonly file: number;
  readonly from: number;
  readonly to: number;
  /** Line of the first row. */
  readonly line: number;
  /** Milliseconds to add to the times as they are written: the second time round of autumn's doubled hour. */
  readonly shift?: number;
}

/**
 * The rows of one minute (of the clock, or since the start) and one state, reduced. Every number is whole, so two
 * halves of a frame add up to the frame whatever the cut: this is what makes the pass independent of parts and
 * threads. The link from the frame before is not in it until `follow` puts it there.
 */
export interface Frame {
  readonly minute: number;
  readonly state: string;
  readonly ranges: FrameRange[];
  rows: number;
  readonly first: RowMark;
  last: RowMark;
  readonly channels: ChannelSums[];
  readonly conditions: ConditionSums[];
  /** Milliseconds that links within the frame span, gaps left out. */
  time: number;
  integral: number;
  /** Steps counted while the drum stood. */
  standing: number;
  /** Steps under conditions that nobody logged. */
  unverified: number;
  events: EventTally | null;
}

export function emptySums(): ChannelSums {
  return {
    count: 0,
    missing: 0,
    sum: 0,
    squares: 0,
    min: Number.POSITIVE_INFINITY,
    max: Number.NEGATIVE_INFINITY,
    atMax: 0,
    first: Number.NaN,
    last: Number.NaN,
  };
}

/** The sums of a condition, made where the frame has none yet. */
export function conditionOf(frame: Frame, condition: number, line: number): ConditionSums {
  for (const known of frame.conditions) if (known.condition === condition) return known;
  const sums = { condition, rows: 0, time: 0, distance: 0, firstLine: line, lastLine: line };
  frame.conditions.push(sums);
  return sums;
}

/** Puts the link to a frame's first row into the frame. */
export function follow(frame: Frame, link: Link): void {
  const sums = conditionOf(frame, frame.first.condition, frame.first.line);
  sums.time += link.time;
  sums.distance += link.distance;
  frame.time += link.time;
  frame.integral += link.integral;
  frame.standing += link.standing;
  frame.unverified += link.unverified;
}

/** Adds the later half of a frame to the earlier one; its link is in it already. */
export function append(frame: Frame, later: Frame): void {
  frame.rows += later.rows;
  frame.last = later.last;
  frame.time += later.time;
  frame.integral += later.integral;
  frame.standing += later.standing;
  frame.unverified += later.unverified;
  for (const range of later.ranges) addRange(frame.ranges, range);
  for (const [c, sums] of later.channels.entries()) addSums(frame.channels[c]!, sums);
  for (const sums of later.conditions) {
    const known = conditionOf(frame, sums.condition, sums.firstLine);
    known.rows += sums.rows;
    known.time += sums.time;
    known.distance += sums.distance;
    if (sums.rows > 0) known.lastLine = sums.lastLine;
  }
  if (later.events) {
    frame.events ??= new EventTally();
    frame.events.merge(later.events);
  }
}

/**
 * Takes a frame's first row out again: it repeats the last row of the earlier half of the same frame. Extremes stay, since the half before has the same values.
 */
export function dropFirst(frame: Frame, channels: readonly FoldChannel[]): void {
  frame.rows -= 1;
  conditionOf(frame, frame.first.condition, frame.first.line).rows -= 1;
  for (const [c, sums] of frame.channels.entries()) {
    const value = frame.first.columns[channels[c]!.source]!;
    if (Number.isNaN(value)) {
      sums.missing -= 1;
      continue;
    }
    const difference = value - channels[c]!.reference;
    sums.count -= 1;
    sums.sum -= difference;
    sums.squares -= difference * difference;
    if (value === sums.max) sums.atMax -= 1;
  }
}

/** Adds a later stretch of a channel. */
export function addSums(sums: ChannelSums, later: ChannelSums): void {
  if (sums.count === 0) sums.first = later.first;
  if (later.count > 0) sums.last = later.last;
  sums.count += later.count;
  sums.missing += later.missing;
  sums.sum += later.sum;
  sums.squares += later.squares;
  sums.min = Math.min(sums.min, later.min);
  if (later.max > sums.max) sums.atMax = later.atMax;
  else if (later.max === sums.max) sums.atMax += later.atMax;
  sums.max = Math.max(sums.max, later.max);
}

export function addRange(ranges: FrameRange[], range: FrameRange): void {
  const last = ranges.at(-1)!;
  if (last.file === range.file && last.to === range.from)
    ranges[ranges.length - 1] = { ...last, to: range.to };
  else ranges.push(range);
}
