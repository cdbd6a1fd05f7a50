import type { SampleColumn, SampleLayout } from './layout.ts';
import type { RowMemory } from './row-memory.ts';
import { RowProgram, type RowReader } from './row-program.ts';
import type { CellShape, RowShape } from './row-shape.ts';
import type { ColumnSentinels } from './sentinels.ts';

export interface ShapeContext {
  readonly layout: SampleLayout;
  readonly memory: RowMemory;
  /** Before the fraction of a second. */
  readonly mark: '.' | ',';
  readonly sentinels: readonly ColumnSentinels[];
}

/**
 * Writes the reader of one shape as a program of its own. A general loop asks at every byte what it may be; here
 * every place is known.
 */
export function shapeReader(shape: RowShape, context: ShapeContext): RowReader {
  const { layout, memory, mark } = context;
  const { separator } = layout.dialect;
  const program = new RowProgram(shape.length, memory);
  const last = shape.cells.length - 1;
  for (const [index, cell] of shape.cells.entries()) {
    if (cell.kind === 'number') {
      writeNumber(
        program,
        cell,
        layout.columns.findIndex((column) => column.index === index),
        context,
      );
    } else if (cell.kind === 'time') {
      writeTime(program, cell, mark);
    } else if (cell.kind === 'state') {
      program.text(cell.word);
      program.state(memory.batch.stateId(cell.word.trim()));
    } else {
      for (let i = 0; i < cell.length; i++) program.anyByte(separator);
    }
    if (index < last) program.text(separator);
  }
  program.text(shape.endLength === 2 ? '\r\n' : String.fromCharCode(layout.lineEnd));
  return program.reader();
}

type Cell<Kind> = CellShape & { readonly kind: Kind };

function writeNumber(
  program: RowProgram,
  { isNegative, digits, fraction }: Cell<'number'>,
  k: number,
  { layout, memory, sentinels }: ShapeContext,
): void {
  const { decimals }: SampleColumn = layout.columns[k]!;
  const column = memory.batch.values[k]!;
  if (isNegative) program.text('-');
  const places = program.number(digits, layout.dialect.decimal, fraction);
  if (digits + (fraction ?? 0) === 0) {
    program.missing(column);
    return;
  }
  const { low, high } = sentinels[k]!;
  program.value(places, { isNegative, scale: 10 ** (decimals - (fraction ?? 0)), low, high }, column);
}

function writeTime(program: RowProgram, { fraction, suffix }: Cell<'time'>, mark: string): void {
  program.minute();
  program.text(':');
  const places = program.number(2, mark, fraction, 5);
  program.text(suffix);
  program.time(places, 10 ** (3 - (fraction ?? 0)));
}
