import type { WorkbookParts } from './parts.ts';
import { walkXml } from './xml.ts';

/** One row of a sheet, from its first column to its last cell. */
export interface SheetRow {
  /** One-based, as the sheet numbers it. */
  readonly line: number;
  readonly cells: string[];
}

const DAY = 86_400_000;
const WIDEST = 16_384;

/**
 * The rows of a sheet that have cells, all of one width. A formula counts for the value that it had when the workbook
 * was saved; a formula's error (`#DIV/0!`) is a cell with that text.
 *
 * @param decimal the mark to write numbers with
 */
export function sheetRows(part: Uint8Array, parts: WorkbookParts, decimal: '.' | ','): SheetRow[] {
  const rows: SheetRow[] = [];
  let row: SheetRow = { line: 0, cells: [] };
  let cell = { column: 0, type: 'n', style: 0 };
  let value = '';
  let inline = '';
  walkXml(
    part,
    ({ name, text }) => {
      if (name === 'v') value = text;
      else if (name === 't') inline += text;
      else if (name === 'row' && row.cells.length > 0) rows.push(row);
      else if (name === 'c') put(row, cell.column, cellText(cell, value, inline, parts, decimal));
    },
    (name, attributes) => {
      if (name === 'row') {
        row = { line: Number(attributes.r ?? row.line + 1), cells: [] };
        cell = { column: 0, type: 'n', style: 0 };
      }
      if (name !== 'c') return;
      const column = attributes.r === undefined ? cell.column + 1 : columnOf(attributes.r);
      cell = { column, type: attributes.t ?? 'n', style: Number(attributes.s ?? 0) };
      value = '';
      inline = '';
    },
  );
  const width = Math.max(0, ...rows.map(({ cells }) => lastFilled(cells) + 1));
  for (const { cells } of rows) {
    while (cells.length < width) cells.push('');
    cells.length = width;
  }
  return rows;
}

function put({ cells }: SheetRow, column: number, text: string): void {
  if (column < 1 || column > WIDEST) return;
  while (cells.length < column) cells.push('');
  cells[column - 1] = text;
}

function cellText(
  { type, style }: { type: string; style: number },
  value: string,
  inline: string,
  parts: WorkbookParts,
  decimal: '.' | ',',
): string {
  switch (type) {
    case 's':
      return value === '' ? '' : (parts.strings[Number(value)] ?? '');
    case 'inlineStr':
      return inline;
    case 'b':
      return value === '1' ? 'TRUE' : 'FALSE';
    case 'n':
      return value === '' ? '' : numberText(value, parts.dateStyles[style] === true, parts.is1904, decimal);
    default:
      return value;
  }
}

/** Digits as the sheet has them; 0.1 + 0.2 is stored as 0.30000000000000004 and shown with 15 digits. */
function numberText(value: string, isDate: boolean, is1904: boolean, decimal: '.' | ','): string {
  const number = Number(value);
  if (!Number.isFinite(number)) return value;
  if (isDate) {
    const base = is1904 ? Date.UTC(1904, 0, 1) : Date.UTC(1899, 11, 30);
    const date = new Date(base + Math.round(number * DAY));
    if (!Number.isNaN(date.getTime()))
      return date
        .toISOString()
        .replace('T', ' ')
        .replace(/(?:\.000)?Z$/, '');
  }
  return String(Number(number.toPrecision(15))).replace('.', decimal);
}

function lastFilled(cells: readonly string[]): number {
  return cells.findLastIndex((cell) => cell.trim() !== '');
}

/** `B7` → 2. */
function columnOf(reference: string): number {
  let column = 0;
  for (const letter of reference.replace(/\d+$/, '')) column = column * 26 + letter.charCodeAt(0) - 64;
  return column;
}

/** 2 → `B`. */
export function columnName(column: number): string {
  let name = '';
  for (let rest = column; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    name = String.fromCharCode(65 + ((rest - 1) % 26)) + name;
  }
  return name;
}
