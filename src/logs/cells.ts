import { quote } from '../problem/echo.ts';
import type { ProblemList } from '../problem/problem.ts';
import { convert } from '../quantity/units.ts';
import type { Column } from './columns.ts';
import type { Dialect } from './dialect.ts';
import { readNumber } from './number.ts';
import type { Row } from './row.ts';

/** Bounds of what a quantity can be at all; outside them the cell is a slip or a rig's word for "no value". */
export interface Range {
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  /** Whether `least` itself is outside. */
  readonly isOpen?: boolean;
}

/** How many distinct texts are shared between rows: names and words repeat, times and remarks do not. */
const MOST_SHARED = 10_000;

/** Reads the cells of one file's rows, and adds each that is not what it should be to the problems. */
export class CellReader {
  readonly #file: string;
  readonly #problems: ProblemList;
  readonly #dialect: Dialect;
  readonly #shared = new Map<string, string>();

  constructor(file: string, problems: ProblemList, dialect: Dialect) {
    this.#file = file;
    this.#problems = problems;
    this.#dialect = dialect;
  }

  /** Without white space around it; null where the column is not there or the cell is empty. */
  text(row: Row, column: Column | undefined): string | null {
    const text = column && row.cells[column.index]!.trim();
    if (!text) return null;
    const shared = this.#shared.get(text);
    if (shared === undefined && this.#shared.size < MOST_SHARED) this.#shared.set(text, text);
    return shared ?? text;
  }

  /** As written, white space and all; null where there is nothing else. */
  verbatim(row: Row, column: Column | undefined): string | null {
    const text = column && row.cells[column.index]!;
    return text && text.trim() !== '' ? text : null;
  }

  /** In the unit of the range; null where the cell is empty or wrong. */
  quantity(row: Row, column: Column | undefined, range: Range, isNeeded = false): number | null {
    const text = column && row.cells[column.index]!.trim();
    if (!text) return null;
    const read = readNumber(text, this.#dialect.decimal);
    if (typeof read !== 'number') {
      this.problem(row, column, 'not-a-number', `${column.name}: ${read.wrong}; ${settledBy(isNeeded)}`);
      return null;
    }
    const value = convert(read, column.unit ?? range.unit, range.unit);
    if (value <= range.most && (range.isOpen ? value > range.least : value >= range.least)) return value;
    const { unit, least, most, isOpen } = range;
    const message =
      `${column.name}: found ${quote(`${text} ${column.unit ?? unit}`)}, expected ${isOpen ? 'more than' : 'at least'} ` +
      `${least} ${unit} and at most ${most} ${unit}; ${settledBy(isNeeded)}`;
    this.problem(row, column, 'out-of-range', message);
    return null;
  }

  /** One of the words, exactly as spelled; null where the cell is empty or wrong. @param settle ends the message */
  word<Value>(
    row: Row,
    column: Column | undefined,
    words: ReadonlyMap<string, Value>,
    settle: { code: string; message: string },
  ): Value | null {
    const text = column && row.cells[column.index]!.trim();
    if (!text) return null;
    const value = words.get(text);
    if (value !== undefined) return value;
    const expected = [...words.keys()].map((word) => `"${word}"`).join(', ');
    const message = `${column.name}: found ${quote(text)}, expected ${expected} or an empty cell; ${settle.message}`;
    this.problem(row, column, settle.code, message);
    return null;
  }

  problem(row: Row, column: Column, code: string, message: string): void {
    this.#problems.add({ file: this.#file, ...row.place(column.index), code, message });
  }
}

function settledBy(isNeeded: boolean): string {
  return isNeeded ? 'correct it' : 'correct it, or empty the cell where no value was noted';
}
