import { quote } from '../problem/echo.ts';
import type { ProblemList } from '../problem/problem.ts';
import type { CellReader } from './cells.ts';
import { type Column, findColumns, headerColumns, unknownColumnMessage } from './columns.ts';
import type { Drop, DropDetails, DropLog } from './drop.ts';
import {
  CATCHER,
  DETAIL_KEYS,
  DROP_COLUMNS,
  DROP_RANGES,
  type DropKey,
  OUTCOMES,
  VALID,
} from './drop-columns.ts';
import { headerFingerprint } from './export/fingerprint.ts';
import type { ImportReport } from './export/import-report.ts';
import type { Finding } from './finding.ts';
import type { TableSink } from './intake.ts';
import { kindOfTable } from './kind.ts';
import type { Row } from './row.ts';

/** `03/04/2025`, `9.3.25`: which of the first two is the month is a matter of the country. */
const EITHER_ORDER = /^\d{1,2}[./-]\d{1,2}[./-](?:\d{4}|\d{2})(?!\d)/;
const MOST_GAPS = 1000;

/** What a drop log in plain form becomes. */
export class DropSink implements TableSink {
  readonly findings: Finding[] = [];
  protected readonly file: string;
  protected readonly problems: ProblemList;
  protected readonly cells: CellReader;
  protected readonly drops: Drop[] = [];
  protected readonly unknown: { name: string; column: number }[] = [];
  protected readonly segments: { line: number; rows: number }[] = [];
  protected readonly gaps: { line: number; missing: number }[] = [];
  protected columns: ReadonlyMap<string, Column> = new Map();
  protected fingerprint = '';
  readonly #seen = new Set<string>();
  #last: number | null = null;
  #hasDetails = false;

  constructor(file: string, problems: ProblemList, cells: CellReader) {
    this.file = file;
    this.problems = problems;
    this.cells = cells;
  }

  read(): Pick<DropLog, 'drops' | 'unknownColumns' | 'columns' | 'import'> {
    return {
      drops: this.drops,
      unknownColumns: this.unknown,
      columns: this.#seen,
      import: this.report(),
    };
  }

  header(row: Row): void {
    const kind = kindOfTable(headerColumns(row).map(({ name }) => name));
    if (kind !== null && kind !== 'drops') {
      const message = `found a table of ${kind}, not a drop log; expected the columns specimen, height and outcome`;
      this.problems.add({ file: this.file, line: row.line, column: null, code: 'not-a-drop-log', message });
      return;
    }
    const { known, unknown } = findColumns(row, DROP_COLUMNS, this.file, this.problems);
    this.begin(row, known, unknown);
    for (const column of unknown) {
      const message = unknownColumnMessage(column, DROP_COLUMNS);
      this.findings.push({ code: 'unknown-column', message, ...row.place(column.index) });
    }
  }

  isCutShort(row: Row): boolean {
    const last = row.cells.length - 1;
    const text = row.cells[last]!.trim();
    const words = this.outcomes();
    return this.columns.get('outcome')?.index === last && !words.has(text) && isBegunWord(text, words);
  }

  row(row: Row): void {
    const drop = this.drop(row);
    this.segments.at(-1)!.rows += 1;
    this.count(drop);
    // Once anything is wrong nothing is returned: the rows after it are read for their problems only.
    if (this.problems.isEmpty && !this.cells.hasStrangeWords) this.drops.push(drop);
  }

  end(): void {
    this.cells.reportWords();
  }

  /** A header was read: its columns, and those that are not known. */
  protected begin(row: Row, known: ReadonlyMap<string, Column>, unknown: readonly Column[]): void {
    this.columns = known;
    this.#hasDetails = DETAIL_KEYS.some((key) => known.has(key));
    if (this.segments.length === 0) this.fingerprint = headerFingerprint(row.cells);
    this.segments.push({ line: row.line, rows: 0 });
    this.#last = null;
    for (const key of known.keys()) this.#seen.add(key);
    for (const { title, index } of unknown)
      this.unknown.push({ name: title, column: row.place(index).column });
  }

  protected report(): ImportReport {
    const read = this.segments.reduce((sum, { rows }) => sum + rows, 0);
    return {
      rig: null,
      fingerprint: this.fingerprint,
      sheet: null,
      rows: { read, kept: this.drops.length, collapsed: 0 },
      emptied: {},
      segments: this.segments,
      gaps: this.gaps,
      conversions: [],
      metadata: [],
    };
  }

  protected outcomes(): ReadonlyMap<string, NonNullable<Drop['outcome']>> {
    return OUTCOMES;
  }

  protected outcome(row: Row, column: Column | undefined): Drop['outcome'] {
    return this.cells.word(row, column, OUTCOMES, OUTCOME_SETTLED);
  }

  protected catcher(row: Row, column: Column | undefined): DropDetails['catcher'] {
    return this.cells.word(row, column, CATCHER, CATCHER_SETTLED);
  }

  protected damage(row: Row, column: Column | undefined): string | null {
    return this.cells.text(row, column);
  }

  protected isValid(row: Row, column: Column | undefined): boolean {
    return this.cells.word(row, column, VALID, VALID_SETTLED) ?? true;
  }

  /** As written; a date that reads as two days is a problem, since only the profile knows the rig's order. */
  protected time(row: Row, column: Column | undefined): string | null {
    const text = this.cells.lone(row, column);
    if (text === null || text[4] === '-' || !EITHER_ORDER.test(text)) return text;
    const message = `time: found ${quote(text)}, whose day and month nothing tells apart, expected ISO 8601; the rig's profile gives the order (export.time.format)`;
    this.cells.problem(row, column!, 'ambiguous-date', message);
    return null;
  }

  protected drop(row: Row): Drop {
    const at = (key: DropKey) => this.columns.get(key);
    const { cells } = this;
    const quantity = (key: keyof typeof DROP_RANGES) => cells.quantity(row, at(key), DROP_RANGES[key]);
    const drop: Drop = {
      file: this.file,
      line: row.line,
      number: this.#number(row, at('number')),
      time: this.time(row, at('time')),
      series: cells.text(row, at('series')),
      specimen: cells.id(row, at('specimen')) ?? this.#needed(row, 'specimen', ''),
      site: oneTurn(quantity('site')),
      plannedHeight: cells.quantity(row, at('plannedHeight'), DROP_RANGES.height),
      height: cells.quantity(row, at('height'), DROP_RANGES.height, true) ?? this.#needed(row, 'height', 0),
      mass: quantity('mass'),
      pressure: quantity('pressure'),
      temperature: quantity('temperature'),
      velocity: quantity('velocity'),
      outcome: this.outcome(row, at('outcome')),
      damage: this.damage(row, at('damage')),
      valid: this.isValid(row, at('valid')),
      reason: cells.text(row, at('reason')),
      operator: cells.text(row, at('operator')),
      remark: cells.verbatim(row, at('remark')),
    };
    return this.#hasDetails ? { ...drop, details: this.#details(row, at) } : drop;
  }

  #details(row: Row, at: (key: DropKey) => Column | undefined): DropDetails {
    const { cells } = this;
    const hits = at('hits');
    return {
      hits: this.#number(row, hits, 'hits'),
      catcher: this.catcher(row, at('catcher')),
      rig: cells.text(row, at('rig')),
      setTemperature: cells.quantity(row, at('setTemperature'), DROP_RANGES.temperature),
      pressureAfter: cells.quantity(row, at('pressureAfter'), DROP_RANGES.pressure),
      gauge: cells.text(row, at('gauge')),
      secondReading: cells.word(row, at('secondReading'), this.outcomes(), OUTCOME_SETTLED),
      reader: cells.text(row, at('reader')),
      leakCheck: cells.text(row, at('leakCheck')),
      criterion: cells.text(row, at('criterion')),
      protocol: cells.text(row, at('protocol')),
    };
  }

  /** Follows the running number. */
  protected count({ number, line }: Drop): void {
    if (number === null) return;
    const missing = this.#last === null ? 0 : number - this.#last - 1;
    if (missing > 0 && this.gaps.length < MOST_GAPS) this.gaps.push({ line, missing });
    this.#last = number;
  }

  #number(row: Row, column: Column | undefined, name = 'drop'): number | null {
    const text = this.cells.text(row, column);
    if (text === null) return null;
    if (/^\d{1,15}$/.test(text)) return Number(text);
    const message = `${name}: found ${quote(text)}, expected a whole number of at least 0, or an empty cell`;
    this.cells.problem(row, column!, name === 'drop' ? 'not-a-drop-number' : 'not-a-number', message);
    return null;
  }

  /** Says that a needed cell is empty, unless what it holds was found wrong already. */
  #needed<Value>(row: Row, key: 'specimen' | 'height', instead: Value): Value {
    const column = this.columns.get(key)!;
    if (this.cells.text(row, column) === null) {
      const message = `${key}: found an empty cell, expected ${key === 'height' ? 'a height' : "the specimen's name"}`;
      this.cells.problem(row, column, 'empty-cell', message);
    }
    return instead;
  }
}

const CATCHER_SETTLED = { code: 'unknown-word', message: 'empty the cell where nothing was noted' };
const OUTCOME_SETTLED = {
  code: 'unknown-outcome',
  message:
    "the rig's profile says what other words mean (export.outcomes.failed, export.outcomes.survived, " +
    'export.outcomes.not-evaluable)',
};
const VALID_SETTLED = {
  code: 'unknown-word',
  message:
    "an empty cell means yes, and the rig's profile maps other words (export.valid.yes, export.valid.no)",
};

function isBegunWord(text: string, words: ReadonlyMap<string, unknown>): boolean {
  return [...words.keys()].some((word) => word.startsWith(text));
}

/** An angle in [0, 360); digits as written stay where nothing is turned. */
function oneTurn(degrees: number | null): number | null {
  if (degrees === null) return null;
  const rest = degrees % 360;
  const turned = rest < 0 ? rest + 360 : rest;
  return turned === 360 || turned === 0 ? 0 : turned;
}
