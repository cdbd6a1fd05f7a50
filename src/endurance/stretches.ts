import { LISTED_EVENTS } from './event-tally.ts';
import type { Frame } from './frame.ts';

/** Neighbouring frames with something in common, such as a load outside its limits. */
export interface Stretch {
  /** Place of the log among the logs, and the lines of the first and last row concerned. */
  readonly file: number;
  readonly firstLine: number;
  lastLine: number;
  /** Milliseconds of the first and last row of the frames. */
  readonly from: number;
  to: number;
  rows: number;
  /** Milliseconds, and steps, of the rows concerned. */
  time: number;
  distance: number;
  /** What the stretch is of, where that matters: the value of a channel that froze. */
  readonly value: number;
}

/** Rows of one frame that belong to a stretch. */
export type StretchPart = Pick<Stretch, 'firstLine' | 'lastLine' | 'rows' | 'time' | 'distance'> & {
  readonly value?: number;
};

/** Joins neighbouring frames to stretches; the first stretches are kept one by one, all of them in sum. */
export class Stretches {
  count = 0;
  rows = 0;
  time = 0;
  distance = 0;
  lastLine = 0;
  readonly listed: Stretch[] = [];
  #open: Stretch | null = null;
  readonly #isWorthy: (stretch: Stretch) => boolean;

  /** @param isWorthy whether a stretch that has ended counts at all */
  constructor(isWorthy: (stretch: Stretch) => boolean = () => true) {
    this.#isWorthy = isWorthy;
  }

  /** Takes the next frame: the part of it that belongs to a stretch, or null where none does. */
  next(frame: Frame, part: StretchPart | null): void {
    if (this.#open && (!part || !Object.is(this.#open.value, part.value ?? 0))) this.close();
    if (!part) return;
    if (!this.#open) {
      const { firstLine, value = 0 } = part;
      const from = frame.first.time;
      this.#open = { file: frame.ranges[0]!.file, firstLine, from, value, ...NOTHING };
    }
    const open = this.#open;
    open.lastLine = part.lastLine;
    open.to = frame.last.time;
    open.rows += part.rows;
    open.time += part.time;
    open.distance += part.distance;
  }

  /** Ends the stretch that is open. */
  close(): void {
    const open = this.#open;
    this.#open = null;
    if (!open || !this.#isWorthy(open)) return;
    this.count += 1;
    this.rows += open.rows;
    this.time += open.time;
    this.distance += open.distance;
    this.lastLine = open.lastLine;
    if (this.listed.length < LISTED_EVENTS) this.listed.push(open);
  }
}

const NOTHING = { lastLine: 0, to: 0, rows: 0, time: 0, distance: 0 };
