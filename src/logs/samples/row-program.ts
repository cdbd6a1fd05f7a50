import type { RowMemory } from './row-memory.ts';
import { callable, F64, I32, I64, WasmCode } from './wasm.ts';

/**
 * Reads rows from byte `at` of the memory's window on for as long as they keep the shape and the minute, and puts them
 * into the batch from place `row` on.
 *
 * @param base byte of the file at which the window begins
 * @param start milliseconds at which the minute begins
 * @returns how many rows were read; 0 where the first is another
 */
export type RowReader = (
  at: number,
  stop: number,
  row: number,
  line: number,
  base: number,
  start: number,
) => number;

const [AT, STOP, ROW, LINE, BASE, START] = [0, 1, 2, 3, 4, 5];
const PARAMETERS = [I32, I32, I32, F64, F64, F64];
const [FIRST, BAD, WORD, PLACE] = [6, 7, 8, 9];
const LOCALS = [I32, I64, I64, I32];
/** Values of cells, until the row is known to fit. */
const VALUES = PARAMETERS.length + LOCALS.length;

const NOUGHT = 0x30;

/** Digits in the bytes of a cell: so many from byte `at` on, and where a mark follows, so many behind it. */
export interface DigitPlaces {
  readonly at: number;
  readonly whole: number;
  readonly fraction: number;
}

/**
 * A WebAssembly program that reads one row after the other, as it is written cell by cell. Byte 8i + j of a row is bits
 * 8j to 8j + 7 of its word i. Taking away (by exclusive or) from each word what must stand there, and the nought where
 * a digit must, leaves 0 and the digits' values; what is left elsewhere is gathered in `bad`, and one question at the
 * end says whether the row kept its shape.
 */
export class RowProgram {
  /** Statements before the question whether the row fits, and those behind it. */
  readonly #asked = new WasmCode();
  readonly #stores = new WasmCode();
  readonly #memory: RowMemory;
  readonly #length: number;
  readonly #expected: Uint8Array;
  readonly #carry: Uint8Array;
  readonly #mask: Uint8Array;
  #at = 0;
  #values = 0;

  /** @param length bytes of a row, line end included */
  constructor(length: number, memory: RowMemory) {
    const padded = Math.ceil(length / 8) * 8;
    this.#memory = memory;
    this.#length = length;
    this.#expected = new Uint8Array(padded);
    this.#carry = new Uint8Array(padded);
    this.#mask = new Uint8Array(padded);
  }

  /** The bytes of this text stand here. */
  text(text: string): void {
    for (const byte of Buffer.from(text)) {
      this.#expected[this.#at] = byte;
      this.#mask[this.#at++] = 0xff;
    }
  }

  /** Digits from 0 to 9 stand here, the first of them up to `most`; what is missing from 9 to 15 is added to ask. */
  digits(count: number, most = 9): void {
    for (let i = 0; i < count; i++) {
      this.#expected[this.#at] = NOUGHT;
      this.#carry[this.#at] = 15 - (i === 0 ? most : 9);
      this.#mask[this.#at++] = 0xf0;
    }
  }

  /** Digits stand here, and behind a mark others where there is a fraction. @returns where */
  number(whole: number, mark: string, fraction: number | null, most = 9): DigitPlaces {
    const at = this.#at;
    this.digits(whole, most);
    if (fraction !== null) this.text(mark);
    this.digits(fraction ?? 0);
    return { at, whole, fraction: fraction ?? 0 };
  }

  /** A byte stands here that is printable, and neither the separator nor a quote. */
  anyByte(separator: string): void {
    const byte = () => this.#asked.get(PLACE);
    const at = this.#at++;
    this.#asked
      .get(AT)
      .load('i32Load8U', this.#memory.bytes.byteOffset + at)
      .set(PLACE);
    byte().i32(32).op('i32LtU');
    byte().i32(126).op('i32GtU', 'i32Or');
    byte().i32('"'.charCodeAt(0)).op('i32Eq', 'i32Or');
    byte().i32(separator.charCodeAt(0)).op('i32Eq', 'i32Or');
    this.#bad('i64ExtendI32U');
  }

  /** The sixteen bytes of the minute at hand stand here. */
  minute(): void {
    const { bytes, minute } = this.#memory;
    for (let i = 0; i < 16; i += 8) {
      this.#asked.get(AT).load('i64Load', bytes.byteOffset + this.#at);
      this.#asked.i32(0).load('i64Load', minute.byteOffset + i);
      this.#bad('i64Xor');
      this.#at += 8;
    }
  }

  /**
   * Puts the number that digits make, times `scale`, into a column. A row in which it is beyond `low` or `high` is left
   * to the general loop.
   */
  value(
    places: DigitPlaces,
    { isNegative, scale, low, high }: { isNegative: boolean; scale: number; low: number; high: number },
    column: Float64Array,
  ): void {
    const code = this.#asked;
    const local = VALUES + this.#values++;
    if (isNegative) code.f64(0);
    this.#whole(code, places);
    if (scale !== 1) code.f64(scale).op('f64Mul');
    if (isNegative) code.op('f64Sub');
    code.set(local);
    if (low > Number.NEGATIVE_INFINITY) {
      code.get(local).f64(low).op('f64Le');
      this.#bad('i64ExtendI32U');
    }
    if (high < Number.POSITIVE_INFINITY) {
      code.get(local).f64(high).op('f64Ge');
      this.#bad('i64ExtendI32U');
    }
    this.#put(column, (stores) => stores.get(local));
  }

  /** The column has no value in these rows. */
  missing(column: Float64Array): void {
    this.#put(column, (stores) => stores.f64(Number.NaN));
  }

  /** Puts the time into the batch: the minute's begin, and the number that digits make, times `scale`. */
  time(places: DigitPlaces, scale: number): void {
    this.#put(this.#memory.batch.time, (stores) => {
      stores.get(START);
      this.#whole(stores, places);
      stores.f64(scale).op('f64Mul', 'f64Add');
    });
  }

  /** The word of the state in these rows. */
  state(id: number): void {
    const { state } = this.#memory.batch;
    this.#stores.get(ROW).i32(2).op('i32Shl').i32(id).store('i32Store', state.byteOffset);
  }

  /** The program, for rows until the batch is full. */
  reader(): RowReader {
    const { memory, batch } = this.#memory;
    const code = new WasmCode().get(ROW).set(FIRST).open('block').open('loop');
    code.get(ROW).i32(batch.capacity).op('i32GeS').leave(1);
    code.get(AT).i32(this.#length).op('i32Add').get(STOP).op('i32GtS').leave(1);
    code.i64(0n).set(BAD);
    this.#writeWords(code);
    code.append(this.#asked);
    code.get(BAD).i64(0n).op('i64Ne').leave(1);
    code.get(ROW).i32(3).op('i32Shl').set(PLACE);
    code.append(this.#stores);
    const position = () => code.get(BASE).get(AT).op('f64ConvertI32S', 'f64Add');
    code.get(PLACE).get(LINE).store('f64Store', batch.line.byteOffset);
    code.get(PLACE);
    position().store('f64Store', batch.from.byteOffset);
    code.get(AT).i32(this.#length).op('i32Add').set(AT);
    code.get(PLACE);
    position().store('f64Store', batch.to.byteOffset);
    code.get(LINE).f64(1).op('f64Add').set(LINE);
    code.get(ROW).i32(1).op('i32Add').set(ROW).leave(0, false).op('end', 'end');
    code.get(ROW).get(FIRST).op('i32Sub');
    const locals = [...LOCALS, ...Array.from({ length: this.#values }, () => F64)];
    return callable<RowReader>({ parameters: PARAMETERS, result: I32, locals, code }, memory);
  }

  /** Of each word: what is left of it, and of that with what is missing to 15, where anything is asked. */
  #writeWords(code: WasmCode): void {
    const word = (bytes: Uint8Array, i: number): bigint => new DataView(bytes.buffer).getBigUint64(i, true);
    for (let i = 0; i < this.#mask.length; i += 8) {
      const mask = word(this.#mask, i);
      if (mask === 0n) continue;
      const carry = word(this.#carry, i);
      code
        .get(AT)
        .load('i64Load', this.#memory.bytes.byteOffset + i)
        .i64(word(this.#expected, i));
      code.op('i64Xor').set(WORD).get(WORD);
      if (carry !== 0n) code.get(WORD).i64(carry).op('i64Add', 'i64Or');
      code.i64(mask).op('i64And').get(BAD).op('i64Or').set(BAD);
    }
  }

  /** Gathers what the statement before it left. */
  #bad(op: 'i64Xor' | 'i64ExtendI32U'): void {
    this.#asked.op(op).get(BAD).op('i64Or').set(BAD);
  }

  #put(column: Float64Array, value: (stores: WasmCode) => void): void {
    this.#stores.get(PLACE);
    value(this.#stores);
    this.#stores.store('f64Store', column.byteOffset);
  }

  /** Leaves the whole number that the digits make. */
  #whole(code: WasmCode, { at, whole, fraction }: DigitPlaces): void {
    const behind = at + whole + 1;
    if (whole + fraction <= MOST_TOGETHER) {
      this.#together(code, [
        { at, count: whole },
        { at: behind, count: fraction },
      ]);
    } else {
      const runs = [...runsOf(at, whole), ...runsOf(behind, fraction)];
      for (const [i, run] of runs.entries()) {
        if (i > 0) code.i64(10n ** BigInt(run.count)).op('i64Mul');
        this.#together(code, [run]);
        if (i > 0) code.op('i64Add');
      }
    }
    code.op('f64ConvertI64S');
  }

  /**
   * Leaves the number that up to eight digits make, the last in the highest byte of a word of 2, 4 or 8 bytes, with
   * noughts for those that lack before: bytes in pairs become numbers below 100 (10·a + b, which is the second byte of
   * the word times 10·256 + 1), these in pairs numbers below 10,000, and so on.
   */
  #together(code: WasmCode, runs: readonly DigitRun[]): void {
    const filled = runs.filter(({ count }) => count > 0);
    const width = 2 ** Math.ceil(Math.log2(filled.reduce((sum, { count }) => sum + count, 0)));
    let behind = filled.reduce((sum, { count }) => sum + count, 0);
    for (const [i, { at, count }] of filled.entries()) {
      code.get(AT).load('i64Load', this.#memory.bytes.byteOffset + at);
      code.i64(repeated(0x0fn, 1, count)).op('i64And');
      if (width > behind) code.i64(BigInt(8 * (width - behind))).op('i64Shl');
      behind -= count;
      if (i > 0) code.op('i64Or');
    }
    for (let size = 1; size < width; size *= 2) {
      const bits = BigInt(8 * size);
      code
        .i64(((10n ** BigInt(size)) << bits) + 1n)
        .op('i64Mul')
        .i64(bits)
        .op('i64ShrU');
      code.i64(repeated((1n << bits) - 1n, 2 * size, width / (2 * size))).op('i64And');
    }
  }
}

/** Digits that stand together. */
interface DigitRun {
  readonly at: number;
  readonly count: number;
}

const MOST_TOGETHER = 8;

function runsOf(at: number, count: number): DigitRun[] {
  if (count <= MOST_TOGETHER) return count > 0 ? [{ at, count }] : [];
  return [...runsOf(at, count - MOST_TOGETHER), { at: at + count - MOST_TOGETHER, count: MOST_TOGETHER }];
}

/** A word with the same bits every `step` bytes, `count` times from the lowest byte on. */
function repeated(bits: bigint, step: number, count: number): bigint {
  let word = 0n;
  for (let i = 0; i < count; i++) word |= bits << BigInt(8 * step * i);
  return word;
}
