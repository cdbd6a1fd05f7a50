import { InputError, type ProblemList } from '../problem/problem.ts';
import type { Fault } from './fault.ts';
import type { Finding, Place } from './finding.ts';
import { Row } from './row.ts';
import type { Padding } from './scan.ts';

/** What a kind of table makes of its rows; both members add what is wrong to the problems. */
export interface TableSink {
  header(row: Row): void;
  /** A row with a cell for every column; only met where the header had no problem. */
  row(row: Row): void;
  /** Behind the last row that could be told: what is wrong with the table as a whole. */
  end?(): void;
  /** Whether the last row of a file, without a line break, has all its cells and yet breaks off in the last. */
  isCutShort?(row: Row): boolean;
}

/** What a rig's profile says of the rows: without it, one header and then rows. */
export interface RowForm {
  /** Whether a header, the same or another, may stand again and begin a segment. */
  readonly restarts: boolean;
  isHeader(row: Row): boolean;
}

/** Takes the rows of one file in their order: the first is the header, those after it must have its width. */
export class Intake {
  readonly #file: string;
  readonly #problems: ProblemList;
  readonly #sink: TableSink;
  readonly #form: RowForm | null;
  readonly #findings: Finding[] = [];
  #header: Row | null = null;
  #rows = 0;
  #emptyRows: { first: Place; count: number } | null = null;

  constructor(file: string, problems: ProblemList, sink: TableSink, form: RowForm | null = null) {
    this.#file = file;
    this.#problems = problems;
    this.#sink = sink;
    this.#form = form;
  }

  /** What a reader should know, so far. */
  get findings(): readonly Finding[] {
    return this.#findings;
  }

  /** @throws InputError where the rest of the file cannot be told, or the header is not of this kind of table. */
  take(scanned: Iterable<Row | Fault>): void {
    for (const item of scanned) {
      if (item instanceof Row) {
        this.#take(item);
      } else {
        this.#problem(item.code, item, item.message);
        if (item.isFatal) this.#throwIfAny();
      }
    }
  }

  /** @throws InputError with every problem of the file. */
  end(padding: Padding | null): readonly Finding[] {
    if (!this.#header) {
      this.#problem('no-header', null, 'found only blank lines, expected a header row and rows');
    } else if (this.#rows === 0) {
      this.#problem(
        'no-rows',
        { line: this.#header.line, column: null },
        `found a header ${this.#onlyWhat()}, expected rows after it`,
      );
    }
    this.#throwIfAny();
    if (this.#emptyRows) {
      const { first, count } = this.#emptyRows;
      this.#finding(
        'empty-rows',
        `${count} ${count === 1 ? 'row holds' : 'rows hold'} no value: left out`,
        first,
      );
    }
    if (padding) {
      const what = padding.count === 1 ? '1 NUL byte' : `${padding.count} NUL bytes`;
      this.#finding('nul-padding', `${what} at the end of the file, as a crash leaves them: cut`, padding);
    }
    return this.#findings;
  }

  #take(row: Row): void {
    if (row.cells.length === 1 && row.isBlank) return;
    if (!this.#header || (this.#form?.restarts && this.#form.isHeader(row))) {
      this.#header = row;
      this.#sink.header(row);
      this.#problems.throwIfAny();
      return;
    }
    const expected = this.#header.cells.length;
    const found = row.cells.length;
    if (this.#isCutShort(row, expected)) {
      const message = `the last line is cut short (${found} of ${expected} cells): left out`;
      this.#finding('truncated-line', message, { line: row.line, column: null });
      return;
    }
    if (row.isBlank) {
      this.#emptyRows ??= { first: row.place(0), count: 0 };
      this.#emptyRows.count += 1;
      return;
    }
    this.#rows += 1;
    if (this.#isHeaderAgain(row)) this.#problem('repeated-header', row.place(0), HEADER_AGAIN);
    else if (found !== expected) this.#ragged(row, expected);
    else this.#sink.row(row);
  }

  /** A last row without a line break is kept where it has all its cells and nothing says that the last is half. */
  #isCutShort(row: Row, expected: number): boolean {
    if (row.isEnded) return false;
    if (row.isCut || row.cells.length < expected) return true;
    return row.cells.length === expected && (this.#sink.isCutShort?.(row) ?? false);
  }

  #ragged(row: Row, expected: number): void {
    const found = row.cells.length;
    const place = found > expected ? row.place(expected) : { line: row.line, column: null };
    const settle = this.#form
      ? 'a cell with a separator stands in quotes, and columns that change need their own header (export.restarts)'
      : found > expected
        ? 'a cell with a comma (a remark, a decimal comma) stands in quotes'
        : 'an empty cell still needs its comma';
    this.#problem(
      'ragged-row',
      place,
      `found ${found} cells, expected ${expected} as in the header; ${settle}`,
    );
  }

  #isHeaderAgain(row: Row): boolean {
    if (this.#form) return this.#form.isHeader(row);
    if (row.cells.length !== this.#header!.cells.length) return false;
    return row.cells.every((cell, i) => cell === this.#header!.cells[i]);
  }

  /** In the order of the lines: what is wrong with the whole was added last. */
  #throwIfAny(): void {
    this.#sink.end?.();
    if (this.#problems.isEmpty) return;
    const last = Number.POSITIVE_INFINITY;
    throw new InputError(
      this.#problems
        .all()
        .toSorted((a, b) => (a.line ?? last) - (b.line ?? last) || (a.column ?? 0) - (b.column ?? 0) || 0),
    );
  }

  #onlyWhat(): string {
    if (this.#findings.length > 0) return 'and one row, cut short';
    return this.#emptyRows ? 'and rows without a value' : 'only';
  }

  #problem(code: string, place: { line: number; column: number | null } | null, message: string): void {
    const { line, column } = place ?? { line: null, column: null };
    this.#problems.add({ file: this.#file, line, column, code, message });
  }

  #finding(code: string, message: string, { line, column }: { line: number; column: number | null }): void {
    this.#findings.push({ code, message, line, column });
  }
}

const HEADER_AGAIN =
  'found the header again, expected one header row; where the rig begins anew that way, its profile says so ' +
  '(export.restarts); else give the parts before and after it as two logs';
