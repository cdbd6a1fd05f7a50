import { instantOf } from '../instant.ts';

/** A minute as the log writes it (`2026-03-02T06:00`), and the offset: while both stay, only seconds are read. */
export class ClockMinute {
  /** Milliseconds since 1970 of the minute's begin. */
  start = Number.NaN;
  /** The 16 characters of date, hour and minute, four to a word; −1 matches no text of ASCII. */
  readonly words = new Int32Array(4).fill(-1);
  /** The offset as written, behind the seconds; empty where the dialect gives it. */
  readonly suffix = new Uint8Array(6);
  suffixLength = 0;
  readonly #offset: string | null;

  constructor(offset: string | null) {
    this.#offset = offset;
  }

  /**
   * Goes on to another minute of the same hour and offset.
   *
   * @param word the last four bytes of the minute, such as `6:00`
   * @returns false where they are no minute, or of another hour
   */
  turn(word: number): boolean {
    const known = this.words[3]!;
    const tens = ((word >> 16) & 0xff) - 0x30;
    const ones = (word >>> 24) - 0x30;
    if ((word ^ known) & 0xffff || tens >>> 0 > 5 || ones >>> 0 > 9 || Number.isNaN(this.start)) return false;
    const before = (((known >> 16) & 0xff) - 0x30) * 10 + (known >>> 24) - 0x30;
    this.start += (tens * 10 + ones - before) * 60_000;
    this.words[3] = word;
    return true;
  }

  /** Takes the minute of a time in full form (`2026-03-02T06:00:00.1+01:00`); false where the text is not that. */
  adopt(text: string): boolean {
    const match = /^.{16}:\d\d(?:\.\d+)?(Z|[+-]\d\d(?::?\d\d)?)?$/u.exec(text);
    if (!match) return false;
    const suffix = match[1] ?? '';
    const start = instantOf(`${text.slice(0, 16)}${suffix || (this.#offset ?? '')}`);
    if (start === null) return false;
    const bytes = new DataView(Uint8Array.from(text.slice(0, 16), (c) => c.charCodeAt(0)).buffer);
    for (let i = 0; i < 4; i++) this.words[i] = bytes.getInt32(i * 4, true);
    this.suffixLength = suffix.length;
    for (let i = 0; i < suffix.length; i++) this.suffix[i] = suffix.charCodeAt(i);
    this.start = start;
    return true;
  }
}
