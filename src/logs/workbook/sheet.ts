import { type CellObject, SSF, type WorkBook } from '@e965/xlsx';

/** One row of a sheet, from its first column to its last cell. */
export interface SheetRow {
  /** One-based, as the sheet numbers it. */
  readonly line: number;
  readonly cells: string[];
}

const DAY = 86_400_000;

/**
 * The rows of a sheet that have cells, all of one width. A formula counts for the value that it had when the workbook
 * was saved; a formula's error (`#DIV/0!`) is a cell with that text.
 *
 * @param decimal the mark to write numbers with
 */
export function sheetRows(book: WorkBook, name: string, decimal: '.' | ','): SheetRow[] {
  const is1904 = book.Workbook?.WBProps?.date1904 === true;
  const rows: SheetRow[] = [];
  for (const [i, row] of (book.Sheets[name]?.['!data'] ?? []).entries()) {
    const cells = Array.from(row ?? [], (cell) => cellText(cell, is1904, decimal));
    if (cells.length > 0) rows.push({ line: i + 1, cells });
  }
  const width = Math.max(0, ...rows.map(({ cells }) => lastFilled(cells) + 1));
  for (const { cells } of rows) {
    while (cells.length < width) cells.push('');
    cells.length = width;
  }
  return rows;
}

function cellText(cell: CellObject | undefined, is1904: boolean, decimal: '.' | ','): string {
  switch (cell?.t) {
    case 's':
      return String(cell.v);
    case 'b':
      return cell.v === true ? 'TRUE' : 'FALSE';
    case 'n':
      return numberText(cell.v as number, showsDate(cell), is1904, decimal);
    case 'd':
      return dateText(cell.v as Date);
    case 'e':
      return cell.w ?? '#VALUE!';
    default:
      return '';
  }
}

function showsDate({ z }: CellObject): boolean {
  return z !== undefined && (SSF.is_date(z) as boolean);
}

/** Digits as the sheet has them; 0.1 + 0.2 is stored as 0.30000000000000004 and shown with 15 digits. */
function numberText(value: number, isDate: boolean, is1904: boolean, decimal: '.' | ','): string {
  if (isDate) {
    const base = is1904 ? Date.UTC(1904, 0, 1) : Date.UTC(1899, 11, 30);
    const date = new Date(base + Math.round(value * DAY));
    if (!Number.isNaN(date.getTime())) return dateText(date);
  }
  return String(Number(value.toPrecision(15))).replace('.', decimal);
}

function dateText(date: Date): string {
  return date
    .toISOString()
    .replace('T', ' ')
    .replace(/(?:\.000)?Z$/, '');
}

function lastFilled(cells: readonly string[]): number {
  return cells.findLastIndex((cell) => cell.trim() !== '');
}
