import { isUtf8 } from 'node:buffer';
import { readFile } from 'node:fs/promises';
import { InputError } from '../../problem/problem.ts';
import { decoderOf } from '../code-page.ts';
import type { Encoding } from '../dialect.ts';
import { noteRead } from '../read-files.ts';
import { Row } from '../row.ts';
import { RowScanner } from '../scan.ts';
import { isArchive } from '../signature.ts';

/** The first rows of an export of which nothing is known yet. */
export interface Sample {
  readonly path: string;
  /** Code pages that the bytes may be; the first is the one that the rows were read with. */
  readonly encodings: readonly Encoding[];
  /** Null for a workbook, and where the columns have fixed widths. */
  readonly separator: string | null;
  /** Characters of each column, where they have fixed widths. */
  readonly widths: readonly number[] | null;
  /** Sheets of a workbook; empty for text. */
  readonly sheets: readonly string[];
  readonly hasHint: boolean;
  readonly rows: readonly Row[];
}

const SEPARATORS = [';', '\t', '|', ','];
const MOST_BYTES = 4 * 1024 * 1024;
const MOST_ROWS = 5000;

/**
 * Reads the beginning of an export, guessing only what the bytes leave no doubt of.
 *
 * @param widths of the columns, where these and no separator tell them apart
 * @throws InputError where the file cannot be read or holds no table
 */
export async function readSample(path: string, widths: readonly number[] | null = null): Promise<Sample> {
  const fail = (code: string, message: string) =>
    new InputError([{ file: path, line: null, column: null, code, message }]);
  let whole: Buffer;
  try {
    noteRead(path);
    whole = await readFile(path);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown reason';
    if (code === 'ENOENT') throw fail('no-such-file', 'there is no such file; check the path');
    throw fail('unreadable-file', `the file cannot be read (${code})`);
  }
  if (whole.length === 0) throw fail('empty-file', 'the file is empty, expected an export');
  if (isArchive(whole)) return { path, ...(await workbookSample(whole, fail)) };
  const bytes = whole.subarray(0, MOST_BYTES);
  const encodings = encodingsOf(bytes);
  const { text } = decoderOf(encodings[0]!).push(bytes);
  if (text === '')
    throw fail('wrong-encoding', 'no code page that rigs write gives text; expected an export of rows');
  const hint = /^"?sep=(.)/i.exec(text)?.[1] ?? null;
  const separator = widths === null ? (hint ?? likeliestSeparator(text)) : null;
  const scanned = new RowScanner(separator ?? ',', widths);
  const rows = [...scanned.push(text), ...scanned.end()].filter((item) => item instanceof Row);
  return {
    path,
    encodings,
    separator,
    widths,
    sheets: [],
    hasHint: hint !== null,
    rows: rows.slice(hint === null ? 0 : 1, MOST_ROWS),
  };
}

async function workbookSample(
  whole: Buffer,
  fail: (code: string, message: string) => InputError,
): Promise<Omit<Sample, 'path'>> {
  const { openWorkbook } = await import('../workbook/open.ts');
  const { sheetRows } = await import('../workbook/sheet.ts');
  try {
    const book = openWorkbook(whole);
    // The sheet with the most rows is the one that is shown; which one is meant stays a question.
    const sheets = book.SheetNames.map((name) => ({ name, rows: sheetRows(book, name, '.') })).toSorted(
      (a, b) => b.rows.length - a.rows.length,
    );
    const rows = (sheets[0]?.rows ?? []).map(
      ({ line, cells }) => new Row({ line, text: '', cells, starts: null, isEnded: true, isCut: false }),
    );
    return {
      encodings: ['utf-8'],
      separator: null,
      widths: null,
      sheets: sheets.map(({ name }) => name),
      hasHint: false,
      rows,
    };
  } catch {
    throw fail('not-a-workbook', 'found a zip archive that is no workbook, expected .xlsx or text');
  }
}

/** UTF-8 is never valid by chance, and UTF-16 shows by its NULs; the rest cannot be told apart for certain. */
function encodingsOf(bytes: Buffer): Encoding[] {
  const head = bytes.subarray(0, 1024);
  if (head[0] === 0xff && head[1] === 0xfe) return ['utf-16le'];
  if (head[0] === 0xfe && head[1] === 0xff) return ['utf-16be'];
  if (head.includes(0)) return [head.indexOf(0) % 2 === 1 ? 'utf-16le' : 'utf-16be'];
  const whole = bytes.subarray(0, Math.max(0, bytes.lastIndexOf(10)) || bytes.length);
  if (isUtf8(whole)) return ['utf-8'];
  const others = ['windows-1252', 'shift_jis', 'gbk'] as const;
  const fitting = others.filter((encoding) => decoderOf(encoding).push(bytes).badByte === null);
  return fitting.length > 0 ? fitting : ['windows-1252'];
}

/** The character that stands equally often in most lines. */
function likeliestSeparator(text: string): string {
  const lines = text.split(/\r\n|\r|\n/).slice(0, 200);
  const score = (separator: string): number => {
    const counts = new Map<number, number>();
    for (const line of lines) {
      const count = line.replaceAll(/"[^"]*"/g, '').split(separator).length - 1;
      if (count > 0) counts.set(count, (counts.get(count) ?? 0) + 1);
    }
    return Math.max(0, ...counts.values());
  };
  return SEPARATORS.reduce((best, it) => (score(it) > score(best) ? it : best));
}
