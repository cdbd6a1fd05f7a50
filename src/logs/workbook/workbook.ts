import { utils, type WorkBook } from '@e965/xlsx';
import { echo, quote } from '../../problem/echo.ts';
import { InputError, type Problem } from '../../problem/problem.ts';
import type { Dialect } from '../dialect.ts';
import { Row } from '../row.ts';
import { openWorkbook } from './open.ts';
import { sheetRows } from './sheet.ts';

/** Where a table of a workbook is found. */
export interface SheetChoice {
  /** As messages name the workbook. */
  readonly file: string;
  /** Null where the workbook has one only. */
  readonly sheet: string | null;
  readonly dialect: Dialect;
}

/**
 * Hands the rows of a workbook's sheet on as if they were lines of text: numbers are written with the dialect's
 * decimal mark, so that one profile reads both. A problem's line and column are those of the cell, and its message
 * begins with the cell's name.
 *
 * @returns the name of the sheet
 * @throws InputError where the workbook cannot be read or does not say which sheet is meant
 */
export function takeWorkbook(
  bytes: Uint8Array,
  { file, sheet, dialect }: SheetChoice,
  take: (rows: readonly Row[]) => void,
): string {
  const fail = (code: string, message: string): InputError =>
    new InputError([{ file, line: null, column: null, code, message }]);
  let book: WorkBook;
  try {
    book = openWorkbook(bytes);
  } catch (error) {
    const reason = echo(error instanceof Error ? error.message : String(error));
    const message = `found a zip archive that is no workbook (${reason}), expected .xlsx; save it again, or export text`;
    throw fail('not-a-workbook', message);
  }
  const names = book.SheetNames;
  const listed = names.map((name) => quote(name)).join(', ');
  if (sheet === null && names.length !== 1) {
    throw fail(
      'which-sheet',
      `found the sheets ${listed}, expected to know which has the log; the profile names it (export.sheet)`,
    );
  }
  const name = sheet ?? names[0]!;
  if (!names.includes(name))
    throw fail(
      'no-such-sheet',
      `found the sheets ${listed}, expected ${quote(name)} as the profile says (export.sheet)`,
    );
  try {
    take(
      sheetRows(book, name, dialect.decimal).map(
        ({ line, cells }) =>
          new Row({ line, text: '', cells, starts: cells.map((_, i) => i), isEnded: true, isCut: false }),
      ),
    );
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(error.problems.map((problem) => withCell(problem, name)));
  }
  return name;
}

function withCell(problem: Problem, sheet: string): Problem {
  const { line, column, message } = problem;
  if (line === null) return problem;
  const cell = column === null ? `row ${line}` : `${utils.encode_col(column - 1)}${line}`;
  return { ...problem, message: `${echo(sheet, 40)}!${cell}: ${message}` };
}
