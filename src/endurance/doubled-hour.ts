import type { Finding } from '../logs/finding.ts';
import type { SampleDialect } from '../logs/samples/dialect.ts';
import { type Zone, zoneOf } from '../logs/time/zone.ts';
import { counted } from '../quantity/format.ts';
import type { Frame, RowMark } from './frame.ts';

const MINUTE = 60_000;
/** A smaller step back is a clock that was set, not the hour that comes again. Common practice, no source. */
const LEAST_STEP = 2 * MINUTE;
/** A longer pause before the doubled hour leaves open which of the two was met first. */
const LONGEST_PAUSE = 15 * MINUTE;

export interface ClockState {
  readonly last: number | null;
  readonly isDoubled: boolean;
  readonly isSecond: boolean;
}

/**
 * Tells the first from the second time round of the hour that autumn doubles, for a log whose clock shows the time of a
 * zone without its offset. Rows are read as of the first time round; here, where minutes come in their order, a step
 * back inside the hour begins the second, until the hour is over.
 */
export class DoubledHour {
  readonly #zone: Zone | null;
  #last: number | null = null;
  #isSecond = false;
  #isDoubled = false;
  #open: { line: number; rows: number } | null = null;

  constructor({ time }: SampleDialect) {
    const name = time !== null && 'zone' in time ? time.zone : null;
    this.#zone = name === null ? null : zoneOf(name);
  }

  /** The frame with its times as they were. */
  settle(frame: Frame): Frame {
    const zone = this.#zone;
    if (zone === null) return frame;
    const { first, last } = frame;
    const wall = first.time + zone.offsetAt(first.time) * MINUTE;
    const [before, after] = zone.offsetsAt(wall);
    if (before === undefined || after === undefined) {
      this.#isDoubled = false;
      this.#isSecond = false;
    } else {
      this.#meet(frame);
    }
    this.#last = last.time;
    return this.#isSecond ? shifted(frame, (before! - after!) * MINUTE) : frame;
  }

  /** Where the clock stands: what the minutes of the next log depend on; null without a zone. */
  get state(): ClockState | null {
    if (this.#zone === null) return null;
    return { last: this.#last, isDoubled: this.#isDoubled, isSecond: this.#isSecond };
  }

  /** Sets the clock to where it stood behind a log whose minutes are known. */
  resume(state: ClockState | null): void {
    if (state === null) return;
    this.#last = state.last;
    this.#isDoubled = state.isDoubled;
    this.#isSecond = state.isSecond;
  }

  /** What was left open since the last call. */
  findings(): readonly Finding[] {
    if (this.#open === null) return [];
    const { line, rows } = this.#open;
    this.#open = null;
    const message = `${counted(rows, 'row')} in the hour that autumn doubles, and nothing before them says the first or the second time round: taken for the first, uncertain by an hour`;
    return [{ code: 'time-uncertain', message, line, column: null }];
  }

  #meet({ first, rows }: Frame): void {
    const last = this.#last;
    if (last !== null && this.#isDoubled && last - first.time >= LEAST_STEP) {
      this.#isSecond = true;
      this.#open = null;
    }
    const isEntered = !this.#isDoubled;
    this.#isDoubled = true;
    if (this.#isSecond) return;
    if (isEntered && (last === null || first.time - last > LONGEST_PAUSE)) {
      this.#open = { line: first.line, rows: 0 };
    }
    if (this.#open) this.#open.rows += rows;
  }
}

function shifted(frame: Frame, shift: number): Frame {
  const mark = (row: RowMark): RowMark => ({ ...row, time: row.time + shift });
  return {
    ...frame,
    minute: frame.minute + shift / MINUTE,
    first: mark(frame.first),
    last: mark(frame.last),
    ranges: frame.ranges.map((range) => ({ ...range, shift })),
    events: frame.events?.later(shift) ?? null,
  };
}
