import { quote } from '../../problem/echo.ts';
import type { Problem } from '../../problem/problem.ts';
import { numberDamage } from '../export/damage.ts';
import { readFormed, ungrouped } from '../export/number-form.ts';
import { splitLine } from '../export/rows.ts';
import { rowFault } from '../fault.ts';
import { scanQuoted } from '../quoted.ts';
import { Row } from '../row.ts';
import type { SampleBatch } from './batch.ts';
import type { SampleColumn, SampleLayout } from './layout.ts';
import type { ColumnSentinels } from './sentinels.ts';
import type { SampleTimes } from './times.ts';
import { wholeNumber } from './whole-number.ts';

/** A row that is out of the ordinary: values, something to count, or problems (without their file). */
export type SlowReading =
  | { readonly kind: 'row' }
  | { readonly kind: 'tally'; readonly code: string }
  | { readonly kind: 'problems'; readonly problems: readonly Omit<Problem, 'file'>[] };

/** What a row is read by, and where its values go. */
export interface SlowContext {
  readonly layout: SampleLayout;
  readonly batch: SampleBatch;
  readonly times: SampleTimes;
  /** By the layout's columns. */
  readonly sentinels: readonly ColumnSentinels[];
}

/**
 * Reads one row with care for everything that the fast path leaves: quotes, blanks round a cell, exponents,
 * sentinels, blank lines, the header again, a line cut short by the end of the file. Where it is a row, its values
 * are put at place `at` of the batch.
 *
 * @param isEnded whether a line end stands behind it: only the last line of a file may lack one
 */
export function readSlowRow(
  text: string,
  line: number,
  isEnded: boolean,
  context: SlowContext,
  at: number,
): SlowReading {
  const { layout } = context;
  const nul = text.indexOf('\0');
  if (nul >= 0 && /^\0*$/u.test(text.slice(nul))) {
    return { kind: 'tally', code: nul === 0 ? 'nul-padding' : 'truncated-line' };
  }
  if (text.trim() === '') return { kind: 'tally', code: 'blank-line' };
  if (text === layout.header || layout.head.rows.includes(text))
    return { kind: 'tally', code: 'repeated-header' };
  const { separator } = layout.dialect;
  const quoted = text.includes('"') ? scanQuoted(text, 0, separator) : null;
  const cells = quoted?.cells ?? text.split(separator);
  if (!isEnded && (cells.length < layout.columnCount || quoted?.open != null)) {
    return { kind: 'tally', code: 'truncated-line' };
  }
  const isOpen = quoted !== null && quoted.open !== null && quoted.stray === null;
  const fault = quoted && (isOpen ? unclosed(line, quoted.open!) : rowFault(text, quoted, line));
  if (fault) return { kind: 'problems', problems: [fault] };
  const row = new Row({ line, text, cells, starts: quoted?.starts ?? null, isEnded, isCut: false });
  if (row.isBlank) return { kind: 'tally', code: 'empty-row' };
  const around = aroundRows(row, layout);
  if (around) return around;
  const form = formProblem(row, layout, text);
  if (form) return { kind: 'problems', problems: [form] };
  const problems = readCells(row, context, at);
  return problems.length > 0 ? { kind: 'problems', problems } : { kind: 'row' };
}

function unclosed(line: number, open: number): Omit<Problem, 'file'> {
  const message =
    'a quoted cell opens here and does not close on its line; a drum log has one sample a line: close the quote';
  return { line, column: open + 1, code: 'unclosed-quote', message };
}

/** Rows that sum up, and the lines before a header that come again where the rig begins anew. */
function aroundRows(row: Row, { dialect, head, start }: SampleLayout): SlowReading | null {
  const first = row.cells.find((cell) => cell.trim() !== '')!.trim();
  if (dialect.footer.includes(first)) return { kind: 'tally', code: 'summary-row' };
  if (!dialect.restarts || head.keys.length === 0 || !head.keys.includes(splitLine(row).key)) return null;
  if (start === 0) return { kind: 'tally', code: 'repeated-preamble' };
  const message =
    'found what stands before the header again, which may state another start for the seconds behind it; give the part from this line on as a log of its own';
  return { kind: 'problems', problems: [{ line: row.line, column: 1, code: 'another-start', message }] };
}

function formProblem(row: Row, layout: SampleLayout, text: string): Omit<Problem, 'file'> | null {
  const { line } = row;
  if (text.includes('\0')) {
    const message =
      'found NUL bytes with text behind them, as a crash leaves them; give the parts before and after as two logs';
    return { line, column: text.indexOf('\0') + 1, code: 'nul-bytes', message };
  }
  if (isAnotherHeader(row, layout)) {
    const message =
      `found another header, ${quote(text)}, expected rows under ${quote(layout.header)}; ` +
      'give the part from this line on as a log of its own';
    return { line, column: 1, code: 'changed-header', message };
  }
  const { length } = row.cells;
  if (length === layout.columnCount) return null;
  const message = `found ${length} cells, expected ${layout.columnCount} as in the header`;
  const column = length > layout.columnCount ? row.place(layout.columnCount).column : null;
  return { line, column, code: 'ragged-row', message };
}

/** A header of other columns or units: no cell is a number, and one of the needed names comes again. */
function isAnotherHeader(row: Row, layout: SampleLayout): boolean {
  const names = new Set(row.cells.map((cell) => cell.replace(/\[.*$/u, '').trim().toLowerCase()));
  return (names.has('speed') && names.has('load')) || (names.has('time') && layout.timeIndex >= 0);
}

function readCells(row: Row, context: SlowContext, at: number): readonly Omit<Problem, 'file'>[] {
  const { layout, batch, times, sentinels } = context;
  const problems: Omit<Problem, 'file'>[] = [];
  const { timeIndex, dateIndex, stateIndex } = layout;
  if (timeIndex >= 0) {
    const clock = row.cells[timeIndex]!.trim();
    const text = dateIndex < 0 ? clock : `${row.cells[dateIndex]!.trim()} ${clock}`;
    const time = times.instant(text);
    if (time === null) problems.push({ ...row.place(timeIndex), ...times.problem(text) });
    else batch.time[at] = Math.round(time);
  }
  if (stateIndex >= 0) {
    const word = row.cells[stateIndex]!.trim();
    if (word.includes('\ufffd')) problems.push({ ...row.place(stateIndex), ...strangeBytes(layout) });
    else batch.state[at] = batch.stateId(word);
  }
  for (const [k, column] of layout.columns.entries()) {
    const text = row.cells[column.index]!.trim();
    const value = readCell(text, column, layout, sentinels[k]!);
    if (typeof value === 'number') batch.values[k]![at] = value;
    else problems.push({ ...row.place(column.index), ...value });
  }
  return problems;
}

function strangeBytes({ dialect }: SampleLayout): { code: string; message: string } {
  const message = `the state holds bytes that are no ${dialect.encoding}, expected text; name the rig's code page (export.encoding)`;
  return { code: 'wrong-encoding', message };
}

function readCell(
  text: string,
  column: SampleColumn,
  { dialect }: SampleLayout,
  sentinels: ColumnSentinels,
): number | { code: string; message: string } {
  if (text === '' || dialect.sentinels.includes(text) || column.sentinels.includes(text)) {
    if (column.role !== 'elapsed') return Number.NaN;
    return { code: 'missing-time', message: `found ${quote(text)}, expected the seconds since the start` };
  }
  const { decimal, thousands, isDecimalStated } = dialect;
  const form = { decimal: isDecimalStated ? decimal : null, thousands };
  const reading = readFormed(text, form);
  const bare = thousands === null ? text : ungrouped(text, decimal, thousands);
  const value = typeof reading === 'number' ? wholeNumber(bare, decimal, column.decimals) : Number.NaN;
  if (sentinels.has(value)) return Number.NaN;
  if (Math.abs(value) < 2 ** 53) return value;
  return typeof reading === 'number'
    ? {
        code: 'out-of-range',
        message: `${column.name}: found ${quote(text)}, which is too large for a ${column.name}; ${NO_VALUE}`,
      }
    : wrongCell(text, column, reading.wrong);
}

const NO_VALUE = 'a rig\'s word for "no value" stands in its profile (export.sentinels)';

function wrongCell(text: string, { name }: SampleColumn, wrong: string): { code: string; message: string } {
  const damage = numberDamage(text);
  if (damage === null) return { code: 'not-a-number', message: `${name}: ${wrong}; ${NO_VALUE}` };
  const message = `${name}: found ${quote(text)}, ${damage}, expected the number as the rig wrote it; export the log again; ${NO_VALUE}`;
  return { code: 'damaged-cell', message };
}
