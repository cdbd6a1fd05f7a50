import { quote } from '../problem/echo.ts';
import type { ProblemList } from '../problem/problem.ts';
import type { LogSource } from './bytes.ts';
import { CellReader, type Range } from './cells.ts';
import { type Column, type ColumnKind, findColumns, headerColumns, unknownColumnMessage } from './columns.ts';
import { PLAIN } from './dialect.ts';
import type { Finding } from './finding.ts';
import type { TableSink } from './intake.ts';
import type { Row } from './row.ts';
import { readTable } from './table.ts';

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
  /** The cell's text; a problem where it is empty. */
  needed(key: Key, expected: string): string;
  /** Adds a problem at a cell. */
  problem(key: Key, code: string, message: string): void;
}

/** The columns of a kind of table, or what they are called in this one, by its header. */
export type ColumnKinds<Key extends string> =
  | readonly ColumnKind<Key>[]
  | ((header: readonly Column[]) => readonly ColumnKind<Key>[]);

/**
 * Reads a small table that a run names beside its logs: mountings, checks, amendments. A column of no known name is
 * found, not read.
 *
 * @param take makes a record of a row; what is wrong with it goes to the row's problems
 * @throws InputError with every problem of the file
 */
export async function readRecords<Key extends string, Item>(
  source: LogSource,
  kinds: ColumnKinds<Key>,
  take: (row: RecordRow<Key>) => Item,
): Promise<RecordTable<Item>> {
  let sink: RecordSink<Key, Item> | undefined;
  const { path, sha256, bytes, findings } = await readTable(source, PLAIN, (file, problems) => {
    sink = new RecordSink(file, problems, kinds, take);
    return sink;
  });
  return { path, sha256, bytes, findings: [...sink!.findings, ...findings], records: sink!.records };
}

class RecordSink<Key extends string, Item> implements TableSink {
  readonly records: Item[] = [];
  readonly findings: Finding[] = [];
  readonly #file: string;
  readonly #problems: ProblemList;
  readonly #cells: CellReader;
  readonly #kinds: ColumnKinds<Key>;
  readonly #take: (row: RecordRow<Key>) => Item;
  #columns: ReadonlyMap<Key, Column> = new Map();

  constructor(
    file: string,
    problems: ProblemList,
    kinds: ColumnKinds<Key>,
    take: (row: RecordRow<Key>) => Item,
  ) {
    this.#file = file;
    this.#problems = problems;
    this.#cells = new CellReader(file, problems, PLAIN);
    this.#kinds = kinds;
    this.#take = take;
  }

  header(row: Row): void {
    const kinds = typeof this.#kinds === 'function' ? this.#kinds(headerColumns(row)) : this.#kinds;
    const { known, unknown } = findColumns(row, kinds, this.#file, this.#problems);
    this.#columns = known;
    for (const column of unknown) {
      const message = unknownColumnMessage(column, kinds);
      this.findings.push({ code: 'unknown-column', message, ...row.place(column.index) });
    }
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
