import { MOST_PROBLEMS, type Problem } from '../../problem/problem.ts';
import { textOf } from '../code-page.ts';
import type { SampleBatch } from './batch.ts';
import { ClockMinute } from './clock.ts';
import type { SampleLayout } from './layout.ts';
import { longNumber, POWERS, SAFE_DIGITS, UNSAFE } from './long-number.ts';
import { NUMBER, RowColumns, STATE, TIME } from './row-columns.ts';
import type { RowMemory } from './row-memory.ts';
import { ShapeMemory } from './shape-memory.ts';
import { readSlowRow, type SlowContext } from './slow-row.ts';
import { StateWord } from './state-word.ts';
import { Tallies } from './tally.ts';
import { SampleTimes } from './times.ts';

const LF = 10;
const CR = 13;
/** What is below it is no text. */
const BLANK = 32;
const MINUS = 45;
const ZERO = 48;
const COLON = 58;
const QUOTE = 34;
/** Digits behind a mark that may as well be one of thousands, where the profile does not say. */
const EITHER_WAY = 3;

/**
 * Bytes → batches of rows. The hot path makes no string and no object: numbers are read digit by digit into whole
 * steps, times by their seconds while the minute stays, the state's word by comparing it with the one before. What
 * it does not know it leaves to `readSlowRow`, which tells values from problems.
 */
export class SampleScanner {
  /** Line ends passed so far; the first line of the part is line 0. */
  lines = 0;
  tallies = new Tallies();
  problems: Omit<Problem, 'file'>[] = [];
  /** How often each code was met; the first of each are kept. */
  problemCounts = new Map<string, number>();
  readonly #layout: SampleLayout;
  readonly #memory: RowMemory;
  readonly #batch: SampleBatch;
  #flush: () => void = () => {};
  readonly #columns: RowColumns;
  readonly #slowContext: SlowContext;
  readonly #times: SampleTimes;
  readonly #clock: ClockMinute;
  readonly #shapes: ShapeMemory;
  readonly #state: StateWord;
  #shapedEnd = 0;
  /** Changes of the clock's offset that the shapes know of. */
  #offsets = 0;

  /** @param memory of the bytes that are scanned, and of the batch */
  constructor(layout: SampleLayout, memory: RowMemory) {
    const { batch } = memory;
    this.#layout = layout;
    this.#memory = memory;
    this.#batch = batch;
    this.#columns = new RowColumns(layout, batch);
    this.#times = new SampleTimes(layout.dialect);
    this.#clock = new ClockMinute(this.#times, layout.dialect.separator, memory.minute);
    this.#state = new StateWord(batch, layout.dialect.encoding);
    const sentinels = this.#columns.layoutSentinels;
    this.#slowContext = { layout, batch, times: this.#times, sentinels };
    this.#shapes = new ShapeMemory({ layout, memory, mark: this.#times.mark, sentinels });
  }

  /** Begins another part. @param flush takes the rows of the batch, and leaves it empty */
  begin(flush: () => void): void {
    this.#flush = flush;
    this.#batch.rows = 0;
    this.lines = 0;
    this.tallies = new Tallies();
    this.problems = [];
    this.problemCounts = new Map();
  }

  /**
   * Reads the rows of bytes `start` to `stop` of the memory; `stop` is behind a line end, and SLACK bytes follow it.
   *
   * @param base byte of the file at which the memory's bytes begin
   * @param isEnded whether the line end before `stop` stands in the file, and was not put there for this call
   */
  scan(start: number, stop: number, base: number, isEnded = true): void {
    const { bytes } = this.#memory;
    const batch = this.#batch;
    const { capacity, time, line, from, to, state } = batch;
    const { kinds, targets, decimals, low, high, sentinels } = this.#columns;
    const count = kinds.length;
    const { dialect, lineEnd } = this.#layout;
    const separator = dialect.separator.charCodeAt(0);
    const point = dialect.decimal.charCodeAt(0) - ZERO;
    const eitherWay = dialect.isDecimalStated ? -1 : EITHER_WAY;
    const timeMark = this.#times.mark.charCodeAt(0);
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    const { words, suffix } = this.#clock;
    let w0 = words[0]!;
    let w1 = words[1]!;
    let w2 = words[2]!;
    let w3 = words[3]!;
    let at = start;
    let lines = this.lines;
    let rows = batch.rows;
    while (at < stop) {
      if (rows === capacity) {
        batch.rows = rows;
        this.#flush();
        rows = 0;
      }
      const isAwake = this.#shapes.isAwake;
      if (isAwake) {
        const read = this.#readShaped(bytes, view, at, stop, rows, lines, base);
        // Also where no row was read, the clock may have been turned.
        w0 = words[0]!;
        w1 = words[1]!;
        w2 = words[2]!;
        w3 = words[3]!;
        if (read > 0) {
          at = this.#shapedEnd;
          rows += read;
          lines += read;
          continue;
        }
      }
      const begin = at;
      let k = 0;
      for (; k < count; k++) {
        const kind = kinds[k]!;
        if (kind === NUMBER) {
          const isNegative = bytes[at]! === MINUS;
          if (isNegative) at++;
          const first = at;
          let steps = 0;
          let digit = bytes[at]! - ZERO;
          while (digit >>> 0 < 10) {
            steps = (Math.imul(steps, 10) + digit) | 0;
            digit = bytes[++at]! - ZERO;
          }
          let digits = at - first;
          let fraction = 0;
          if (digit === point) {
            const behind = ++at;
            digit = bytes[at]! - ZERO;
            while (digit >>> 0 < 10) {
              steps = (Math.imul(steps, 10) + digit) | 0;
              digit = bytes[++at]! - ZERO;
            }
            fraction = at - behind;
            digits += fraction;
            if (fraction === eitherWay) break;
          }
          const shift = decimals[k]! - fraction;
          let value = 0;
          if (digits <= SAFE_DIGITS && shift >= 0 && digits > 0) {
            value = steps * POWERS[shift]!;
          } else if (digits > 0) {
            value = longNumber(bytes, first, at, point + ZERO, decimals[k]!);
          } else if (isNegative || at > first) {
            break;
          } else {
            // An empty cell, unless what follows is no separator.
            value = Number.NaN;
          }
          if (value >= UNSAFE) break;
          // Taken from nought, so that −0 becomes 0.
          if (isNegative) value = 0 - value;
          if (value <= low[k]! || value >= high[k]!) value = sentinels[k]!.read(value);
          targets[k]![rows] = value;
        } else if (kind === TIME) {
          if (
            view.getInt32(at, true) !== w0 ||
            view.getInt32(at + 4, true) !== w1 ||
            view.getInt32(at + 8, true) !== w2 ||
            view.getInt32(at + 12, true) !== w3
          ) {
            if (!this.#clock.adopt(bytes, at)) break;
            w0 = words[0]!;
            w1 = words[1]!;
            w2 = words[2]!;
            w3 = words[3]!;
          }
          const tens = bytes[at + 17]! - ZERO;
          const ones = bytes[at + 18]! - ZERO;
          if (bytes[at + 16] !== COLON || tens >>> 0 > 5 || ones >>> 0 > 9) break;
          let milliseconds = (tens * 10 + ones) * 1000;
          at += 19;
          if (bytes[at] === timeMark) {
            const behind = ++at;
            let weight = 100;
            let digit = bytes[at]! - ZERO;
            while (digit >>> 0 < 10) {
              const place = at - behind;
              if (place < 3) milliseconds += digit * weight;
              else if (place === 3 && digit >= 5) milliseconds += 1;
              weight = place === 0 ? 10 : 1;
              digit = bytes[++at]! - ZERO;
            }
            if (at === behind) break;
          }
          const { suffixLength } = this.#clock;
          let s = 0;
          while (s < suffixLength && bytes[at + s] === suffix[s]) s++;
          const behind = bytes[at + s]!;
          if (s < suffixLength || (behind !== separator && behind !== LF && behind !== CR)) {
            // The offset changed within the minute, as clocks are put back, or goes on behind what was known of it.
            const cell = cellStart(bytes, begin, k, separator);
            if (!this.#clock.adopt(bytes, cell)) break;
            w0 = words[0]!;
            w1 = words[1]!;
            w2 = words[2]!;
            w3 = words[3]!;
            at = cell;
            k--;
            continue;
          }
          at += suffixLength;
          time[rows] = this.#clock.start + milliseconds;
        } else {
          const first = at;
          if (bytes[at] === QUOTE) break;
          let byte = bytes[at]!;
          while (byte !== separator && byte >= BLANK) byte = bytes[++at]!;
          if (kind === STATE) {
            if (!this.#state.isSame(bytes, first, at) && !this.#state.adopt(bytes, first, at)) break;
            state[rows] = this.#state.id;
          }
        }
        if (k < count - 1) {
          if (bytes[at] !== separator) break;
          at++;
        }
      }
      if (k === count && !Number.isNaN(time[rows]!)) {
        if (bytes[at] === CR && lineEnd === LF) at++;
        if (bytes[at] === lineEnd) {
          at++;
          line[rows] = lines;
          from[rows] = base + begin;
          to[rows] = base + at;
          rows++;
          lines++;
          if (isAwake) this.#shapes.learn(bytes.toString('latin1', begin, at));
          continue;
        }
      }
      const end = bytes.indexOf(lineEnd, begin);
      at = end + 1;
      if (this.#slow(bytes, begin, end, rows, lines, isEnded || at < stop)) {
        line[rows] = lines;
        from[rows] = base + begin;
        to[rows] = base + at;
        rows++;
      }
      lines++;
    }
    this.lines = lines;
    batch.rows = rows;
  }

  /** Counts a problem, and keeps it where it is among the first of its code. */
  problem(problem: Omit<Problem, 'file'>): void {
    const count = (this.problemCounts.get(problem.code) ?? 0) + 1;
    this.problemCounts.set(problem.code, count);
    if (count <= MOST_PROBLEMS) this.problems.push(problem);
  }

  /** Rows that keep a shape met before; where they end is left in `#shapedEnd`. */
  #readShaped(
    bytes: Buffer,
    view: DataView,
    at: number,
    stop: number,
    row: number,
    line: number,
    base: number,
  ): number {
    const { recent } = this.#shapes;
    if (recent.length === 0) return 0;
    if (this.#layout.timeIndex === 0) this.#clock.turnTo(bytes, view, at);
    if (this.#clock.changes !== this.#offsets) {
      this.#offsets = this.#clock.changes;
      this.#shapes.forget();
      return 0;
    }
    for (let i = 0; i < recent.length; i++) {
      const shape = recent[i]!;
      const read = shape.read(at, stop, row, line, base, this.#clock.start);
      if (read === 0) continue;
      this.#shapedEnd = at + read * shape.length;
      this.#shapes.fitted(shape, read);
      return read;
    }
    return 0;
  }

  #slow(bytes: Buffer, begin: number, end: number, row: number, line: number, isEnded: boolean): boolean {
    const behind = end > begin && bytes[end - 1] === CR ? end - 1 : end;
    const text = textOf(bytes.subarray(begin, behind), this.#layout.dialect.encoding);
    const reading = readSlowRow(text, line, isEnded, this.#slowContext, row);
    if (reading.kind === 'tally') this.tallies.add(reading.code, line);
    else if (reading.kind === 'problems') for (const problem of reading.problems) this.problem(problem);
    return reading.kind === 'row';
  }
}

/** Where a cell begins in a row of which the cells before it are known to hold no quotes. */
function cellStart(bytes: Buffer, begin: number, index: number, separator: number): number {
  let at = begin;
  for (let k = 0; k < index; k++) at = bytes.indexOf(separator, at) + 1;
  return at;
}
