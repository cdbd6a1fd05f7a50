import type { JudgedFrame } from './condition-judge.ts';
import type { Frame } from './frame.ts';
import type { FoldPlan } from './plan.ts';

/** What a stretch of time was, for one channel; the bits of neighbouring stretches add up. */
export const STRIP = { within: 1, below: 2, above: 4, missing: 8, standing: 16 } as const;

/** Cells of a strip at most; from half of them on it is as fine as it can be. */
const CELLS = 64;
/** Minutes of a jump of the clock that a strip shows: a clock that fell to 1980 would leave nothing to see. */
const LONGEST_GAP = 1440;

/**
 * The course of a test in so many cells as a line of characters has: for each channel whether it lay within its limits.
 * Memory does not grow with the log: where the cells are used up, two become one.
 */
export class Strips {
  /** Minutes of one cell: a power of two. */
  minutesPerCell = 1;
  /** Milliseconds of the first minute. */
  begin = Number.NaN;
  /** By channel, then by cell: the bits of STRIP; 0 where nothing was logged. */
  readonly cells: number[][];
  #minute = Number.NaN;
  #place = 0;

  constructor(plan: FoldPlan) {
    this.cells = plan.channels.map(() => []);
  }

  /** Takes every piece of a minute that lies in one block, in order. */
  next(frame: Frame, judged: JudgedFrame): void {
    if (Number.isNaN(this.#minute)) this.begin = frame.minute * 60_000;
    else this.#place += Math.min(LONGEST_GAP, Math.max(0, frame.minute - this.#minute));
    this.#minute = frame.minute;
    while (this.#place >= CELLS * this.minutesPerCell) this.#halve();
    const cell = Math.floor(this.#place / this.minutesPerCell);
    for (const [c, cells] of this.cells.entries()) {
      while (cells.length <= cell) cells.push(0);
      cells[cell]! |= bitsOf(judged, c);
    }
  }

  #halve(): void {
    this.minutesPerCell *= 2;
    for (const cells of this.cells) {
      for (let i = 0; i < cells.length; i += 2) cells[i / 2] = cells[i]! | (cells[i + 1] ?? 0);
      cells.length = Math.ceil(cells.length / 2);
    }
  }
}

function bitsOf(judged: JudgedFrame, channel: number): number {
  let bits = 0;
  for (const { sums, isTurning, channels } of judged) {
    if (sums.rows === 0) continue;
    if (!isTurning) {
      bits |= STRIP.standing;
      continue;
    }
    const state = channels[channel];
    if (state === 'in') bits |= STRIP.within;
    else if (state === 'below' || state === 'above' || state === 'missing') bits |= STRIP[state];
  }
  return bits;
}
