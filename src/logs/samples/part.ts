import { closeSync, openSync, readSync } from 'node:fs';
import { MOST_PROBLEMS, type Problem } from '../../problem/problem.ts';
import type { SampleBatch } from './batch.ts';
import type { SampleLayout } from './layout.ts';
import { RowMemory, SLACK } from './row-memory.ts';
import { SampleScanner } from './scanner.ts';
import type { Tally } from './tally.ts';

/** The lines of a file that begin at byte `from` or later and before `to`. */
export interface FilePart {
  readonly path: string;
  readonly from: number;
  readonly to: number;
  /** Bytes of the file when the pass began: what is written to it later is not read. */
  readonly size: number;
}

/** What a part's scan leaves beside its rows; lines are counted from the part's first, which is 0. */
export interface PartScan {
  readonly lines: number;
  readonly tallies: readonly Tally[];
  /** The first of each code. */
  readonly problems: readonly Omit<Problem, 'file'>[];
  /** How many more of a code there were. */
  readonly problemsBeyond: readonly (readonly [code: string, count: number])[];
}

/** Bytes read at once, and the longest line that can be a row. */
export const WINDOW = 1 << 18;

/** Scans parts of logs of one layout in constant memory; what it learnt of one part serves the next. */
export class PartScanner {
  readonly #layout: SampleLayout;
  readonly #memory: RowMemory;
  readonly #scanner: SampleScanner;

  /** @param window bytes read at once; a longer line is a problem */
  constructor(
    layout: SampleLayout,
    { capacity = 2048, window = WINDOW }: { capacity?: number | undefined; window?: number | undefined } = {},
  ) {
    this.#layout = layout;
    this.#memory = new RowMemory(layout, capacity, window);
    this.#scanner = new SampleScanner(layout, this.#memory);
  }

  /** @param take is called with the batch whenever it is full, and once at the end; it is emptied behind the call */
  scan(part: FilePart, take: (batch: SampleBatch) => void): PartScan {
    const { batch, bytes } = this.#memory;
    const scanner = this.#scanner;
    const { start } = this.#layout;
    const flush = (): void => {
      if (start !== 0) for (let row = 0; row < batch.rows; row++) batch.time[row]! += start;
      if (batch.rows > 0) take(batch);
      batch.rows = 0;
    };
    scanner.begin(flush);
    const handle = openSync(part.path, 'r');
    try {
      readLines(handle, part, this.#layout, scanner, bytes);
    } finally {
      closeSync(handle);
    }
    flush();
    const { lines, tallies, problems, problemCounts } = scanner;
    const problemsBeyond = [...problemCounts].flatMap(([code, count]) =>
      count > MOST_PROBLEMS ? [[code, count - MOST_PROBLEMS] as const] : [],
    );
    return { lines, tallies: tallies.all(), problems, problemsBeyond };
  }
}

function readLines(
  handle: number,
  { from, to, size }: FilePart,
  layout: SampleLayout,
  scanner: SampleScanner,
  bytes: Buffer,
): void {
  const window = bytes.length - SLACK;
  const { lineEnd, bodyOffset } = layout;
  const isFirst = from <= bodyOffset;
  // The line that is under way at `from` belongs to the part before: it ends at the first line end from here on.
  let isSkipping = !isFirst;
  let position = isFirst ? bodyOffset : from - 1;
  let kept = 0;
  /** A line that does not fit the window: its first byte, while it is passed over. */
  let isTooLong = false;
  for (;;) {
    const base = position - kept;
    const read = readSync(handle, bytes, kept, Math.min(window - kept, size - position), position);
    position += read;
    let end = kept + read;
    let start = 0;
    if (isSkipping || isTooLong) {
      const stop = bytes.subarray(0, end).indexOf(lineEnd);
      if (stop < 0 && read > 0) {
        kept = 0;
        continue;
      }
      start = stop < 0 ? end : stop + 1;
      if (isTooLong) scanner.lines += 1;
      isSkipping = false;
      isTooLong = false;
    }
    if (base + start >= to) return;
    // The last line of the part is the one that runs over its last byte, so it ends there or later.
    const last =
      base + end >= to ? bytes.subarray(0, end).indexOf(lineEnd, Math.max(start, to - 1 - base)) : -1;
    if (last >= 0) {
      scanner.scan(start, last + 1, base);
      return;
    }
    if (read === 0) {
      if (position < size) shrank(position, size, scanner);
      if (start < end) {
        bytes[end++] = lineEnd;
        scanner.scan(start, end, base, false);
      }
      return;
    }
    const stop = end > start ? bytes.lastIndexOf(lineEnd, end - 1) + 1 : 0;
    if (stop > start) {
      scanner.scan(start, stop, base);
      start = stop;
    }
    if (end - start === window) {
      tooLong(bytes, scanner);
      isTooLong = true;
      kept = 0;
    } else {
      bytes.copy(bytes, 0, start, end);
      kept = end - start;
    }
  }
}

function shrank(position: number, size: number, scanner: SampleScanner): void {
  const message = `the file ended at byte ${position} while it was read, expected ${size} bytes as at its opening; find out who rewrote it, then start again`;
  scanner.problem({ line: scanner.lines, column: null, code: 'log-shrank', message });
}

function tooLong(bytes: Buffer, scanner: SampleScanner): void {
  if (bytes[0] === 0) {
    scanner.tallies.add('nul-padding', scanner.lines);
    return;
  }
  const message =
    `found a line of more than ${Math.floor((bytes.length - SLACK) / 1000)} kB, expected one sample a line; ` +
    'look whether the file is a text with line ends';
  scanner.problem({ line: scanner.lines, column: null, code: 'row-too-long', message });
}

/** Cuts a body into parts of about `length` bytes; where they fall makes no difference to any result. */
export function partsOf(path: string, bodyOffset: number, size: number, length: number): FilePart[] {
  const count = Math.max(1, Math.ceil((size - bodyOffset) / length));
  return Array.from({ length: count }, (_, i) => ({
    path,
    from: bodyOffset + i * length,
    to: Math.min(size, bodyOffset + (i + 1) * length),
    size,
  }));
}
