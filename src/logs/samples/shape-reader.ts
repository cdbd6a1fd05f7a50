import type { SampleBatch } from './batch.ts';
import type { ClockMinute } from './clock.ts';
import type { SampleColumn, SampleLayout } from './layout.ts';
import { RowProgram, wholeOf } from './row-program.ts';
import type { CellShape, RowShape } from './row-shape.ts';
import type { ColumnSentinels } from './sentinels.ts';

/**
 * Reads rows from byte `at` on for as long as they keep the shape, the minute and the state, and puts them into the
 * batch from place `row` on.
 *
 * @returns how many rows were read; 0 where the first is another
 */
export type ShapeReader = (
  bytes: Uint8Array,
  view: DataView,
  at: number,
  stop: number,
  row: number,
  line: number,
  base: number,
) => number;

export interface ShapeContext {
  readonly layout: SampleLayout;
  readonly batch: SampleBatch;
  readonly clock: ClockMinute;
  /** Before the fraction of a second. */
  readonly mark: '.' | ',';
  readonly sentinels: readonly ColumnSentinels[];
}

/**
 * Writes the reader of one shape as a program of its own. A general loop asks at every byte what it may be; here
 * every place is known. A row is loaded in words of four bytes; taking away (by exclusive or) what must stand there,
 * and the nought where a digit must, leaves 0 and the digits' values. What is left elsewhere is gathered in `bad`,
 * and one question at the end says whether the row kept its shape. Measured at four times the speed of the general
 * loop (bench/RESULTS-drum.md).
 *
 * The program is put together from numbers only: places, byte values and powers of ten; no text of a log is in it.
 */
export function shapeReader(
  shape: RowShape,
  { layout, batch, clock, mark, sentinels }: ShapeContext,
): ShapeReader {
  const program = new RowProgram(shape.length);
  const last = shape.cells.length - 1;
  for (const [index, cell] of shape.cells.entries()) {
    const k = layout.columns.findIndex((column) => column.index === index);
    if (cell.kind === 'number') {
      writeNumber(program, cell, layout.columns[k]!, k, layout.dialect.decimal, sentinels[k]!);
    } else if (cell.kind === 'time') {
      writeTime(program, cell, mark);
    } else if (cell.kind === 'state') {
      program.text(cell.word);
      program.stores.push(`state[row] = ${batch.stateId(cell.word.trim())};`);
    } else {
      for (let i = 0; i < cell.length; i++) program.anyByte(layout.dialect.separator);
    }
    if (index < last) program.text(layout.dialect.separator);
  }
  program.text(shape.endLength === 2 ? '\r\n' : String.fromCharCode(layout.lineEnd));
  const { time, line, from, to, state } = batch;
  const names = ['clock', 'time', 'lineOf', 'from', 'to', 'state', ...batch.values.map((_, k) => `c${k}`)];
  const make = new Function(...names, program.source(batch.capacity));
  return make(clock, time, line, from, to, state, ...batch.values) as ShapeReader;
}

type Cell<Kind> = CellShape & { readonly kind: Kind };

function writeNumber(
  program: RowProgram,
  { isNegative, digits, fraction }: Cell<'number'>,
  column: SampleColumn,
  k: number,
  decimal: string,
  sentinels: ColumnSentinels,
): void {
  if (isNegative) program.text('-');
  const values = Array.from({ length: digits }, () => program.digit(9));
  if (fraction !== null) program.text(decimal);
  for (let i = 0; i < (fraction ?? 0); i++) values.push(program.digit(9));
  if (values.length === 0) {
    program.stores.push(`c${k}[row] = NaN;`);
    return;
  }
  const scale = 10 ** (column.decimals - (fraction ?? 0));
  program.lines.push(`const v${k} = ${isNegative ? '0 - ' : ''}${scaled(values, scale)};`);
  if (sentinels.low > Number.NEGATIVE_INFINITY) program.lines.push(`if (v${k} <= ${sentinels.low}) bad = 1;`);
  if (sentinels.high < Number.POSITIVE_INFINITY)
    program.lines.push(`if (v${k} >= ${sentinels.high}) bad = 1;`);
  program.stores.push(`c${k}[row] = v${k};`);
}

function writeTime(program: RowProgram, { fraction, suffix }: Cell<'time'>, mark: string): void {
  program.minute();
  program.text(':');
  const seconds = [program.digit(5), program.digit(9)];
  if (fraction !== null) program.text(mark);
  const parts = Array.from({ length: fraction ?? 0 }, () => program.digit(9));
  program.text(suffix);
  const scale = 10 ** (3 - parts.length);
  program.stores.push(`time[row] = start + ${wholeOf([...seconds, ...parts], scale)};`);
}

/** What fits 32 bits with its scale stays whole; else the first nine digits and the rest are put together. */
function scaled(places: readonly number[], scale: number): string {
  if (10 ** places.length * scale < 2 ** 31) return wholeOf(places, scale);
  const rest = places.slice(9);
  const head = wholeOf(places.slice(0, 9), 1);
  const whole = rest.length === 0 ? head : `(${head} * ${10 ** rest.length} + ${wholeOf(rest, 1)})`;
  return `${whole} * ${scale}`;
}
