import { quote } from '../problem/echo.ts';
import type { ProblemList } from '../problem/problem.ts';
import type { LogSource } from './bytes.ts';
import { CellReader, type Range } from './cells.ts';
import { type Column, type ColumnKind, findColumns, headerColumns, unknownColumnMessage } from './columns.ts';
import { type Dialect, PLAIN } from './dialect.ts';
import type { Finding } from './finding.ts';
import { instantOf } from './instant.ts';
import type { TableSink } from './intake.ts';
import type { Row } from './row.ts';
import { readTable, type TableForm } from './table.ts';

/** A small table in plain form, read to its end. */
export interface RecordTable<Item> {
  readonly path: string;
  readonly sha256: string;
  readonly bytes: number;
  readonly findings: readonly Finding[];
  readonly records: readonly Item[];
}

/** One row of a small table, asked by the keys of its columns. */
export interface RecordRow<Key extends string> {
  readonly file: string;
  readonly line: number;
  text(key: Key): string | null;
  quantity(key: Key, range: Range): number | null;
  /** The unit of a column as written in its brackets; null without them. */
  unitOf(key: Key): string | null;
  /** A whole number of at least 0. */
  count(key: Key): number | null;
  word<Value>(key: Key, words: ReadonlyMap<string, Value>): Value | null;
  /** Milliseconds since 1970 of a time; null where the cell is empty or wrong. */
  instant(key: Key): number | null;
  /** The cell's text; a problem where it is empty. */
  needed(key: Key, expected: string): string;
  /** Adds a problem at a cell. */
  problem(key: Key, code: string, message: string): void;
}

/** The columns of a kind of table, or what they are called in this one, by its header. */
export type ColumnKinds<Key extends string> =
  | readonly ColumnKind<Key>[]
  | ((header: readonly Column[]) => readonly ColumnKind<Key>[]);

/** How a small table is written: what a rig's profile says in place of the plain form. */
export interface RecordForm {
  readonly dialect: Dialect;
  readonly table: (TableForm & { readonly rows: { readonly findings: readonly Finding[] } }) | null;
  cells(file: string, problems: ProblemList): CellReader;
  find<Key extends string>(
    header: Row,
    kinds: readonly ColumnKind<Key>[],
    file: string,
    problems: ProblemList,
  ): { readonly known: ReadonlyMap<Key, Column>; readonly findings: readonly Finding[] };
  /** An instant, or one sentence on what is wrong with the text and what settles it. */
  instant(text: string): number | { readonly wrong: string };
}

const PLAIN_FORM: RecordForm = {
  dialect: PLAIN,
  table: null,
  cells: (file, problems) => new CellReader(file, problems, PLAIN),
  find: (header, kinds, file, problems) => {
    const { known, unknown } = findColumns(header, kinds, file, problems);
    const findings = unknown.map((column) => ({
      code: 'unknown-column',
      message: unknownColumnMessage(column, kinds),
      ...header.place(column.index),
    }));
    return { known, findings };
  },
  instant: (text) =>
    instantOf(text) ?? {
      wrong: `found ${quote(text)}, expected an ISO 8601 time with its offset, such as 2026-03-02T05:00:00+01:00; write it so`,
    },
};

/**
 * Reads a small table that a run names beside its logs: mountings, checks, amendments. A column of no known name is
 * found, not read.
 *
 * @param take makes a record of a row; what is wrong with it goes to the row's problems
 * @param form how the table is written; the plain form where it is left out
 * @throws InputError with every problem of the file
 */
export async function readRecords<Key extends string, Item>(
  source: LogSource,
  kinds: ColumnKinds<Key>,
  take: (row: RecordRow<Key>) => Item,
  form: RecordForm = PLAIN_FORM,
): Promise<RecordTable<Item>> {
  let sink: RecordSink<Key, Item> | undefined;
  const { path, sha256, bytes, findings } = await readTable(
    source,
    form.dialect,
    (file, problems) => {
      sink = new RecordSink(file, problems, kinds, take, form);
      return sink;
    },
    form.table,
  );
  const around = form.table?.rows.findings ?? [];
  return {
    path,
    sha256,
    bytes,
    findings: [...around, ...sink!.findings, ...findings],
    records: sink!.records,
  };
}

class RecordSink<Key extends string, Item> implements TableSink {
  readonly records: Item[] = [];
  readonly findings: Finding[] = [];
  readonly #file: string;
  readonly #problems: ProblemList;
  readonly #cells: CellReader;
  readonly #kinds: ColumnKinds<Key>;
  readonly #take: (row: RecordRow<Key>) => Item;
  readonly #form: RecordForm;
  #columns: ReadonlyMap<Key, Column> = new Map();

  constructor(
    file: string,
    problems: ProblemList,
    kinds: ColumnKinds<Key>,
    take: (row: RecordRow<Key>) => Item,
    form: RecordForm,
  ) {
    this.#file = file;
    this.#problems = problems;
    this.#cells = form.cells(file, problems);
    this.#form = form;
    this.#kinds = kinds;
    this.#take = take;
  }

  header(row: Row): void {
    const kinds = typeof this.#kinds === 'function' ? this.#kinds(headerColumns(row)) : this.#kinds;
    const { known, findings } = this.#form.find(row, kinds, this.#file, this.#problems);
    this.#columns = known;
    this.findings.push(...findings);
  }

  row(row: Row): void {
    const record = this.#take(this.#asked(row));
    if (this.#problems.isEmpty) this.records.push(record);
  }

  end(): void {
    this.#cells.reportWords();
  }

  #asked(row: Row): RecordRow<Key> {
    const cells = this.#cells;
    const at = (key: Key) => this.#columns.get(key);
    const problem = (key: Key, code: string, message: string) => {
      const column = at(key);
      if (column) cells.problem(row, column, code, message);
      else this.#problems.add({ file: this.#file, line: row.line, column: null, code, message });
    };
    return {
      file: this.#file,
      line: row.line,
      text: (key) => cells.text(row, at(key)),
      quantity: (key, range) => cells.quantity(row, at(key), range),
      unitOf: (key) => at(key)?.unit ?? null,
      count: (key) => {
        const text = cells.text(row, at(key));
        if (text === null) return null;
        if (/^\d{1,15}$/.test(text)) return Number(text);
        problem(
          key,
          'bad-count',
          `${key}: found ${quote(text)}, expected a whole number, or an empty cell; correct it`,
        );
        return null;
      },
      word: (key, words) =>
        cells.word(row, at(key), words, { code: 'unknown-word', message: 'correct it, or empty the cell' }),
      instant: (key) => {
        const text = cells.text(row, at(key));
        const read = text === null ? null : this.#form.instant(text);
        if (typeof read === 'number' || read === null) return read;
        problem(key, 'bad-time', `${key}: ${read.wrong}`);
        return null;
      },
      needed: (key, expected) => {
        const text = cells.text(row, at(key));
        if (text === null)
          problem(key, 'empty-cell', `${key}: found an empty cell, expected ${expected}; fill it`);
        return text ?? '';
      },
      problem,
    };
  }
}
