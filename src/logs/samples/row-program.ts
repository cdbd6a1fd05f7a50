/**
 * The text of a program that reads one row after the other, as it is written cell by cell. Byte 4i + j of a row is
 * bits 8j to 8j + 7 of word i.
 */
export class RowProgram {
  /** Statements before the question whether the row fits, and those behind it. */
  readonly lines: string[] = [];
  readonly stores: string[] = [];
  readonly #length: number;
  readonly #expected: Uint8Array;
  readonly #carry: Uint8Array;
  readonly #asked: Uint8Array;
  #at = 0;

  /** @param length bytes of a row, line end included */
  constructor(length: number) {
    const padded = Math.ceil(length / 4) * 4;
    this.#length = length;
    this.#expected = new Uint8Array(padded);
    this.#carry = new Uint8Array(padded);
    this.#asked = new Uint8Array(padded);
  }

  /** The bytes of this text stand here. */
  text(text: string): void {
    for (const byte of Buffer.from(text)) {
      this.#expected[this.#at] = byte;
      this.#asked[this.#at++] = 0xff;
    }
  }

  /**
   * A digit from 0 to `most` stands here. Its value is below 16, and stays so when what is missing from `most` to
   * 15 is added.
   *
   * @returns its place in the row
   */
  digit(most: number): number {
    const at = this.#at++;
    this.#expected[at] = 0x30;
    this.#carry[at] = 15 - most;
    this.#asked[at] = 0xf0;
    return at;
  }

  /** A byte stands here that is printable, and neither the separator nor a quote. */
  anyByte(separator: string): void {
    const at = this.#at++;
    const place = `bytes[at + ${at}]`;
    const other = `${place} === 34 || ${place} === ${separator.charCodeAt(0)}`;
    this.lines.push(`if (${place} < 32 || ${place} > 126 || ${other}) bad = 1;`);
  }

  /** The sixteen bytes of the minute at hand stand here. */
  minute(): void {
    for (let i = 0; i < 4; i++) {
      this.lines.push(`bad |= view.getInt32(at + ${this.#at}, true) ^ w${i};`);
      this.#at += 4;
    }
  }

  /** The program, for rows until the batch holds `capacity`. */
  source(capacity: number): string {
    return `return (bytes, view, at, stop, row, line, base) => {
      const { words, start } = clock;
      const w0 = words[0], w1 = words[1], w2 = words[2], w3 = words[3];
      const first = row;
      for (; row < ${capacity} && at + ${this.#length} <= stop; row++) {
        let bad = 0;
        ${this.#words().join('\n')}
        ${this.lines.join('\n')}
        if (bad !== 0) break;
        ${this.stores.join('\n')}
        lineOf[row] = line++;
        from[row] = base + at;
        at += ${this.#length};
        to[row] = base + at;
      }
      return row - first;
    };`;
  }

  #words(): string[] {
    const word = (bytes: Uint8Array, i: number): number => new DataView(bytes.buffer).getInt32(i * 4, true);
    return Array.from({ length: this.#expected.length / 4 }, (_, i) => i)
      .filter((i) => word(this.#asked, i) !== 0)
      .flatMap((i) => [
        `const x${i} = view.getInt32(at + ${i * 4}, true) ^ ${word(this.#expected, i)};`,
        `bad |= (x${i} | x${i} + ${word(this.#carry, i)}) & ${word(this.#asked, i)};`,
      ]);
  }
}

/**
 * The expression for the whole number that digits at these places make, times `scale`.
 *
 * Two digits of one word are taken out together: of a word times 10·256^(3−a) + 256^(3−b) the highest byte is ten
 * times byte a plus byte b. Nothing carries into it: the bytes of the word are digits or 0, so no byte of the product
 * exceeds 9·10 + 9; a byte of a cell that is not read stands at least one 0 away, and carries one byte up only.
 */
export function wholeOf(places: readonly number[], scale: number): string {
  const terms: string[] = [];
  for (let i = 0; i < places.length; i++) {
    const place = places[i]!;
    const next = places[i + 1];
    const isPair = next !== undefined && next >> 2 === place >> 2;
    const behind = places.length - 1 - i - (isPair ? 1 : 0);
    if (isPair) i++;
    const word = `x${place >> 2}`;
    const value = isPair
      ? `(Math.imul(${word}, ${10 * 256 ** (3 - (place & 3)) + 256 ** (3 - (next & 3))}) >>> 24)`
      : `(${word} >> ${(place & 3) * 8} & 15)`;
    terms.push(`Math.imul(${value}, ${10 ** behind * scale})`);
  }
  return `(${terms.join(' + ')} | 0)`;
}
