import { echo, quote } from '../../problem/echo.ts';
import type { ColumnKind } from '../columns.ts';
import type { Fault } from '../fault.ts';
import type { Finding } from '../finding.ts';
import type { RowForm } from '../intake.ts';
import { Row } from '../row.ts';
import { namesColumn } from './header.ts';
import type { ImportReport } from './import-report.ts';
import type { ExportProfile } from './profile.ts';

/** Beyond this many lines without the columns, the file is another one. */
const LONGEST_PREAMBLE = 500;
const SEPARATOR_HINT = /^"?sep=(.?)"?[;,\t|]*$/i;
/** A drop's metadata, not a second log. */
const MOST_METADATA = 1000;

/**
 * Passes the rows of an export on as if they were plain: a header, then rows. What stands around them, a
 * spreadsheet's `sep=` line, the preamble, rows of units and of processing, summary rows, is taken out and kept.
 */
export class ExportRows implements RowForm {
  readonly restarts: boolean;
  readonly metadata: ImportReport['metadata'][number][] = [];
  readonly findings: Finding[] = [];
  /** Units of the columns of the last header, where a row gives them. */
  units: readonly string[] | null = null;
  readonly #profile: ExportProfile;
  readonly #kinds: readonly ColumnKind<string>[];
  readonly #headers = new WeakSet<Row>();
  readonly #firstName: number;
  #state: 'begin' | 'preamble' | 'around header' | 'body' = 'begin';
  #passed = 0;
  #at = 0;
  #header: Row | null = null;
  #fault: Fault | null = null;
  /** How the last header writes the column of specimens. */
  #specimen = '';

  constructor(profile: ExportProfile, kinds: readonly ColumnKind<string>[]) {
    this.restarts = profile.restarts;
    this.#profile = profile;
    this.#kinds = kinds;
    this.#firstName = profile.header.indexOf('names');
  }

  isHeader(row: Row): boolean {
    return this.#headers.has(row);
  }

  /** The value of a line `key: value` before the header; null where there is none. */
  valueOf(key: string): { readonly line: number; readonly value: string } | null {
    return this.metadata.findLast((entry) => entry.key === key) ?? null;
  }

  *pass(items: Iterable<Row | Fault>): Generator<Row | Fault> {
    for (const item of items) {
      if (!(item instanceof Row)) {
        yield item;
        continue;
      }
      const passed = this.#take(item);
      if (this.#fault) yield this.#fault;
      this.#fault = null;
      if (passed) yield passed;
    }
  }

  /** Behind the last row: a fault where no header was met. */
  *end(): Generator<Fault> {
    if (this.#state === 'preamble' && this.#header === null && this.#passed > 0) yield this.#noHeader();
  }

  #take(row: Row): Row | null {
    if (this.#state === 'body') return this.#body(row);
    if (this.#state === 'around header') return this.#aroundHeader(row);
    if (this.#state === 'begin') {
      const hint = SEPARATOR_HINT.exec(row.text.trim() === 'sep=' ? 'sep=\t' : row.text);
      if (hint) return this.#hint(row, hint[1]!);
      this.#state = 'preamble';
    }
    return this.#preamble(row);
  }

  #hint(row: Row, separator: string): null {
    if (separator !== this.#profile.dialect.separator) {
      const message =
        `found the line ${quote(row.text)}, expected the separator of the profile, ` +
        `${quote(this.#profile.dialect.separator)}; correct the one that is wrong (export.separator)`;
      this.#fail({ line: row.line, column: 1, code: 'separator-conflict', message, isFatal: true });
    }
    const message = "a spreadsheet's hint for the separator stands before the export: passed over";
    this.findings.push({ code: 'separator-hint', message, line: row.line, column: 1 });
    return null;
  }

  #preamble(row: Row): Row | null {
    const { preamble } = this.#profile;
    const isHere =
      preamble === 'until-header' ? this.#hasColumns(row) : this.#passed >= preamble && !isEmpty(row);
    if (isHere) return this.#aroundHeader(row);
    this.#passed += 1;
    if (!isEmpty(row)) this.#keep(row, this.#splitLine(row));
    if (preamble === 'until-header' && this.#passed > LONGEST_PREAMBLE) this.#fail(this.#noHeader());
    return null;
  }

  /** Rows from the first of the header's to the last of them; the names are passed on behind the last. */
  #aroundHeader(row: Row): Row | null {
    const { header } = this.#profile;
    if (this.#state !== 'around header') {
      this.#state = 'around header';
      // With a preamble of open length, rows above the names have been taken for it.
      this.#at = this.#profile.preamble === 'until-header' ? this.#firstName : 0;
      this.units = null;
      this.#header = null;
    }
    if (isEmpty(row) && header[this.#at] !== 'units') return null;
    const kind = header[this.#at]!;
    if (kind === 'names') this.#header = row;
    else if (kind === 'units') this.#takeUnits(row);
    this.#at += 1;
    if (this.#at < header.length) return null;
    this.#state = 'body';
    this.#headers.add(this.#header!);
    this.#specimen = this.#header!.cells.find((cell) => this.#isSpecimen(cell)) ?? '';
    return this.#header;
  }

  #takeUnits(row: Row): void {
    this.units = row.cells.map((cell) => cell.trim());
    const numbers = this.units.filter((cell) => /^[+-]?\d+(?:[.,]\d+)?$/.test(cell));
    if (numbers.length === 0) return;
    const place = row.place(this.units.indexOf(numbers[0]!));
    const message = `found ${quote(numbers[0]!)} in the row of units, expected a unit; the profile says which rows the header has (export.header)`;
    this.#fail({ ...place, code: 'no-units-row', message, isFatal: true });
  }

  #body(row: Row): Row | null {
    const footer = this.#footer(row);
    if (footer !== null) {
      this.#keep(row, footer);
      return null;
    }
    if (this.#mayBeHeader(row) && this.#hasColumns(row)) {
      if (this.restarts) return this.#aroundHeader(row);
      this.#headers.add(row);
      return row;
    }
    if (this.restarts && this.#beginsAnew(row)) {
      this.#state = 'preamble';
      this.#passed = 0;
      this.#header = row;
      return this.#preamble(row);
    }
    return row;
  }

  /** What a row that sums up says; null for any other. */
  #footer(row: Row): { key: string; value: string } | null {
    const { footer, dialect } = this.#profile;
    if (dialect.widths) {
      const text = row.text.trim();
      const key = footer.find((word) => text.startsWith(word));
      return key === undefined ? null : { key, value: text.slice(key.length).trim() };
    }
    const at = row.cells.findIndex((cell) => cell.trim() !== '');
    const key = row.cells[at]?.trim();
    if (key === undefined || !footer.includes(key)) return null;
    const rest = row.cells.slice(at + 1);
    return { key, value: rest.join(' ').trim() };
  }

  /** A line around a table of fixed widths has no columns. */
  #splitLine(row: Row): { key: string; value: string } {
    return splitLine(this.#profile.dialect.widths ? { cells: [row.text] } : row);
  }

  /** Whether the row is the first line of the preamble again. */
  #beginsAnew(row: Row): boolean {
    const first = this.metadata[0];
    return first !== undefined && this.#profile.preamble !== 0 && this.#splitLine(row).key === first.key;
  }

  /** A quick look before the thorough one, which every row of a long log would pay for. */
  #mayBeHeader(row: Row): boolean {
    return row.text === '' || row.text.includes(this.#specimen);
  }

  #hasColumns(row: Row): boolean {
    return this.#kinds.every((kind) => {
      if (!kind.isNeeded) return true;
      const rule = this.#profile.columns.get(kind.name);
      return row.cells.some((cell) => namesColumn(cell, kind, rule));
    });
  }

  #noHeader(): Fault {
    const names = this.#kinds
      .filter(({ isNeeded }) => isNeeded)
      .map(({ name }) => quote(this.#profile.columns.get(name)?.name ?? name));
    const mistaken = this.metadata.some(({ key, value }) => /[ÂÃ][\u0080-\u00bf]/u.test(key + value));
    const message =
      `found no line with the columns ${names.join(', ')} of rig ${echo(this.#profile.rig)}` +
      `${mistaken ? ' (UTF-8 read as another code page: export.encoding)' : ''}; ` +
      'give the profile of the rig that wrote this export, or correct export.columns';
    return { line: 1, column: 1, code: 'no-header', message, isFatal: true };
  }

  #isSpecimen(cell: string): boolean {
    return namesColumn(cell, { name: 'specimen' }, this.#profile.columns.get('specimen'));
  }

  #keep(row: Row, { key, value }: { key: string; value: string }): void {
    if (this.metadata.length < MOST_METADATA) this.metadata.push({ line: row.line, key, value });
  }

  #fail(fault: Fault): void {
    this.#fault ??= fault;
  }
}

function isEmpty(row: Row): boolean {
  return row.isBlank;
}

/** `Key: value`, `Key = value`, or the first cell and the others. */
export function splitLine(row: Pick<Row, 'cells'>): { key: string; value: string } {
  const [first = '', ...others] = row.cells.map((cell) => cell.trim()).filter((cell) => cell !== '');
  const [, key, begin] = /^([^:=]{1,80}?)\s*[:=]\s*(.*)$/su.exec(first) ?? [];
  const value = key === undefined ? others : [begin!, ...others].filter((part) => part !== '');
  return { key: key ?? first, value: value.join(' ') };
}
