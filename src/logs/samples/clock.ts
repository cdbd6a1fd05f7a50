import type { SampleTimes } from './times.ts';

const LF = 10;
const CR = 13;
/** Beyond it no time is written. */
const LONGEST = 40;

/** A minute as the log writes it (`2026-03-02T06:00`), and the offset: while both stay, only seconds are read. */
export class ClockMinute {
  /** Milliseconds since 1970 of the minute's begin. */
  start = Number.NaN;
  /** The 16 characters of date, hour and minute, four to a word; −1 matches no text of ASCII. */
  readonly words: Int32Array;
  /** The offset as written, behind the seconds; empty where the dialect gives it. */
  readonly suffix = new Uint8Array(6);
  suffixLength = 0;
  /** How often the offset became another. */
  changes = 0;
  readonly #times: SampleTimes;
  readonly #separator: number;

  /** @param words where the minute is kept: four */
  constructor(times: SampleTimes, separator: string, words: Int32Array) {
    this.words = words.fill(-1);
    this.#times = times;
    this.#separator = separator.charCodeAt(0);
  }

  /** Sets the clock to the minute of the time at `at`, which a new minute begins now and then. */
  turnTo(bytes: Buffer, view: DataView, at: number): void {
    const { words } = this;
    const minute = view.getInt32(at + 12, true);
    if (minute === words[3]) return;
    const isSameHour =
      view.getInt32(at, true) === words[0] &&
      view.getInt32(at + 4, true) === words[1] &&
      view.getInt32(at + 8, true) === words[2];
    if (!isSameHour || !this.#turn(minute)) this.adopt(bytes, at);
  }

  /** Takes the minute of the time at `at` in full form (`2026-03-02T06:00:00.1+01:00`); false where it is not that. */
  adopt(bytes: Buffer, at: number): boolean {
    const times = this.#times;
    if (!times.isByMinute) return false;
    let end = at;
    while (end < at + LONGEST && bytes[end] !== LF && bytes[end] !== CR && bytes[end] !== this.#separator)
      end++;
    const text = bytes.toString('latin1', at, end);
    const match = /^(.{16}:)\d\d(?:([.,])\d+)?(Z|[+-]\d\d(?::?\d\d)?)?$/u.exec(text);
    if (!match || (match[2] !== undefined && match[2] !== times.mark)) return false;
    const suffix = match[3] ?? '';
    const start = times.instant(`${match[1]}00${match[2] === undefined ? '' : `${match[2]}0`}${suffix}`);
    if (start === null) return false;
    const view = new DataView(bytes.buffer, bytes.byteOffset + at, 16);
    for (let i = 0; i < 4; i++) this.words[i] = view.getInt32(i * 4, true);
    this.#setSuffix(suffix);
    this.start = start;
    return true;
  }

  #setSuffix(suffix: string): void {
    let isOther = suffix.length !== this.suffixLength;
    this.suffixLength = suffix.length;
    for (let i = 0; i < suffix.length; i++) {
      const byte = suffix.charCodeAt(i);
      if (this.suffix[i] !== byte) isOther = true;
      this.suffix[i] = byte;
    }
    if (isOther) this.changes += 1;
  }

  /**
   * Goes on to another minute of the same hour and offset.
   *
   * @param word the last four bytes of the minute, such as `6:00`
   * @returns false where they are no minute, or of another hour
   */
  #turn(word: number): boolean {
    const known = this.words[3]!;
    const tens = ((word >> 16) & 0xff) - 0x30;
    const ones = (word >>> 24) - 0x30;
    if ((word ^ known) & 0xffff || tens >>> 0 > 5 || ones >>> 0 > 9) return false;
    if (Number.isNaN(this.start) || !this.#times.isSteady) return false;
    const before = (((known >> 16) & 0xff) - 0x30) * 10 + (known >>> 24) - 0x30;
    this.start += (tens * 10 + ones - before) * 60_000;
    this.words[3] = word;
    return true;
  }
}
