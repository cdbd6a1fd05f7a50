import { quote } from '../problem/echo.ts';
import type { ProblemList } from '../problem/problem.ts';
import type { LogSource } from './bytes.ts';
import { CellReader, type Range } from './cells.ts';
import { type Column, type ColumnKind, findColumns, headerColumns, unknownColumnMessage } from './columns.ts';
import { type Dialect, PLAIN } from './dialect.ts';
import type { Drop, DropLog } from './drop.ts';
import type { Finding } from './finding.ts';
import type { TableSink } from './intake.ts';
import { kindOfTable } from './kind.ts';
import type { Row } from './row.ts';
import { readTable } from './table.ts';

type Key = Exclude<keyof Drop, 'file' | 'line'>;

/** The columns of a drop log in plain form. */
export const DROP_COLUMNS: readonly ColumnKind<Key>[] = [
  { key: 'number', name: 'drop', unit: null },
  { key: 'time', name: 'time', unit: null },
  { key: 'series', name: 'series', unit: null },
  { key: 'specimen', name: 'specimen', unit: null, isNeeded: true },
  { key: 'site', name: 'site', unit: 'deg' },
  { key: 'plannedHeight', name: 'planned height', unit: 'mm' },
  { key: 'height', name: 'height', unit: 'mm', isNeeded: true },
  { key: 'mass', name: 'mass', unit: 'kg' },
  { key: 'pressure', name: 'pressure', unit: 'bar' },
  { key: 'temperature', name: 'temperature', unit: '°C' },
  { key: 'velocity', name: 'velocity', unit: 'm/s' },
  { key: 'outcome', name: 'outcome', unit: null, isNeeded: true },
  { key: 'damage', name: 'damage', unit: null },
  { key: 'valid', name: 'valid', unit: null },
  { key: 'reason', name: 'reason', unit: null },
  { key: 'operator', name: 'operator', unit: null },
  { key: 'remark', name: 'remark', unit: null },
];

// Common practice, no source: far beyond any rig, near enough to catch a slip of the unit and words such as -9999.
const HEIGHT: Range = { unit: 'mm', least: 0, most: 100_000, isOpen: true };
const MASS: Range = { unit: 'kg', least: 0, most: 10_000, isOpen: true };
const PRESSURE: Range = { unit: 'bar', least: 0, most: 100 };
const TEMPERATURE: Range = { unit: '°C', least: -273.15, most: 1000 };
const VELOCITY: Range = { unit: 'm/s', least: 0, most: 100 };
/** Ten turns either way: a rig may count on. */
const SITE: Range = { unit: 'deg', least: -3600, most: 3600 };

const OUTCOMES = new Map<string, NonNullable<Drop['outcome']>>(
  (['failed', 'survived', 'not-evaluable'] as const).map((word) => [word, word]),
);
const VALID = new Map([
  ['yes', true],
  ['no', false],
  ['true', true],
  ['false', false],
]);
const OUTCOME_SETTLED = {
  code: 'unknown-outcome',
  message: "the rig's profile maps other words (export: outcomes)",
};
const VALID_SETTLED = { code: 'unknown-word', message: 'an empty cell means yes' };

/**
 * Reads a drop log.
 *
 * @param source a path, or the stream of standard input
 * @throws InputError with every problem of the file at its line and column
 */
export async function readDropLog(source: LogSource, dialect: Dialect = PLAIN): Promise<DropLog> {
  let sink: DropSink | undefined;
  const table = await readTable(source, dialect, (path, problems) => {
    sink = new DropSink(path, problems, dialect);
    return sink;
  });
  return { ...table, ...sink!.read(), findings: [...sink!.findings, ...table.findings] };
}

class DropSink implements TableSink {
  readonly findings: Finding[] = [];
  readonly #file: string;
  readonly #problems: ProblemList;
  readonly #cells: CellReader;
  readonly #drops: Drop[] = [];
  readonly #unknown: { name: string; column: number }[] = [];
  #columns: ReadonlyMap<Key, Column> = new Map();

  constructor(file: string, problems: ProblemList, dialect: Dialect) {
    this.#file = file;
    this.#problems = problems;
    this.#cells = new CellReader(file, problems, dialect);
  }

  read(): Pick<DropLog, 'drops' | 'unknownColumns' | 'columns'> {
    return { drops: this.#drops, unknownColumns: this.#unknown, columns: new Set(this.#columns.keys()) };
  }

  header(row: Row): void {
    const kind = kindOfTable(headerColumns(row).map(({ name }) => name));
    if (kind !== null && kind !== 'drops') {
      const message = `found a table of ${kind}, not a drop log; expected the columns specimen, height and outcome`;
      this.#problems.add({ file: this.#file, line: row.line, column: null, code: 'not-a-drop-log', message });
      return;
    }
    const { known, unknown } = findColumns(row, DROP_COLUMNS, this.#file, this.#problems);
    this.#columns = known;
    for (const column of unknown) {
      const place = row.place(column.index);
      this.#unknown.push({ name: column.title, column: place.column });
      this.findings.push({
        code: 'unknown-column',
        message: unknownColumnMessage(column, DROP_COLUMNS),
        ...place,
      });
    }
  }

  isCutShort(row: Row): boolean {
    const last = row.cells.length - 1;
    const text = row.cells[last]!.trim();
    return this.#columns.get('outcome')?.index === last && !OUTCOMES.has(text) && isBegunWord(text);
  }

  row(row: Row): void {
    const at = (key: Key) => this.#columns.get(key);
    const cells = this.#cells;
    const drop: Drop = {
      file: this.#file,
      line: row.line,
      number: this.#number(row, at('number')),
      time: cells.text(row, at('time')),
      series: cells.text(row, at('series')),
      specimen: cells.text(row, at('specimen')) ?? this.#needed(row, 'specimen', ''),
      site: oneTurn(cells.quantity(row, at('site'), SITE)),
      plannedHeight: cells.quantity(row, at('plannedHeight'), HEIGHT),
      height: cells.quantity(row, at('height'), HEIGHT, true) ?? this.#needed(row, 'height', 0),
      mass: cells.quantity(row, at('mass'), MASS),
      pressure: cells.quantity(row, at('pressure'), PRESSURE),
      temperature: cells.quantity(row, at('temperature'), TEMPERATURE),
      velocity: cells.quantity(row, at('velocity'), VELOCITY),
      outcome: cells.word(row, at('outcome'), OUTCOMES, OUTCOME_SETTLED),
      damage: cells.text(row, at('damage')),
      valid: cells.word(row, at('valid'), VALID, VALID_SETTLED) ?? true,
      reason: cells.text(row, at('reason')),
      operator: cells.text(row, at('operator')),
      remark: cells.verbatim(row, at('remark')),
    };
    // Once anything is wrong nothing is returned: the rows after it are read for their problems only.
    if (this.#problems.isEmpty) this.#drops.push(drop);
  }

  #number(row: Row, column: Column | undefined): number | null {
    const text = this.#cells.text(row, column);
    if (text === null) return null;
    if (/^\d{1,15}$/.test(text)) return Number(text);
    const message = `drop: found ${quote(text)}, expected a whole number of at least 0, or an empty cell`;
    this.#cells.problem(row, column!, 'not-a-drop-number', message);
    return null;
  }

  /** Says that a needed cell is empty, unless what it holds was found wrong already. */
  #needed<Value>(row: Row, key: 'specimen' | 'height', instead: Value): Value {
    const column = this.#columns.get(key)!;
    if (row.cells[column.index]!.trim() === '') {
      const message = `${key}: found an empty cell, expected ${key === 'height' ? 'a height' : "the specimen's name"}`;
      this.#cells.problem(row, column, 'empty-cell', message);
    }
    return instead;
  }
}

function isBegunWord(text: string): boolean {
  return [...OUTCOMES.keys()].some((word) => word.startsWith(text));
}

/** An angle in [0, 360); digits as written stay where nothing is turned. */
function oneTurn(degrees: number | null): number | null {
  if (degrees === null) return null;
  const rest = degrees % 360;
  const turned = rest < 0 ? rest + 360 : rest;
  return turned === 360 || turned === 0 ? 0 : turned;
}
