import { quote } from '../problem/echo.ts';
import type { LogSource } from './bytes.ts';
import type { ColumnKind } from './columns.ts';
import { type RecordTable, readRecords } from './records.ts';
import { spanOf } from './span.ts';

/** One entry of the journal of amendments: what a log's row said, what it says now, and who answers for it. */
export interface Amendment {
  readonly file: string;
  readonly line: number;
  /** Path of the log as the run gives it; null where there is one. */
  readonly log: string | null;
  /** The row by its line, or by the rig's number of the drop. */
  readonly logLine: number | null;
  readonly drop: number | null;
  /** Column of the plain form, without its unit. */
  readonly what: string;
  readonly old: string;
  readonly new: string;
  readonly reason: string;
  readonly by: string;
  readonly on: string;
}

type Key = 'logLine' | 'rowLine' | 'drop' | 'log' | 'what' | 'old' | 'new' | 'reason' | 'by' | 'on';

/** The columns of the journal; the row is named by `line` (or `log line`) or by `drop`. */
export const AMENDMENT_COLUMNS: readonly ColumnKind<Key>[] = [
  { key: 'rowLine', name: 'line', unit: null },
  { key: 'logLine', name: 'log line', unit: null },
  { key: 'drop', name: 'drop', unit: null },
  { key: 'log', name: 'log', unit: null },
  { key: 'what', name: 'what', unit: null, isNeeded: true },
  { key: 'old', name: 'old', unit: null, isNeeded: true },
  { key: 'new', name: 'new', unit: null, isNeeded: true },
  { key: 'reason', name: 'reason', unit: null, isNeeded: true },
  { key: 'by', name: 'by', unit: null, isNeeded: true },
  { key: 'on', name: 'on', unit: null, isNeeded: true },
];

/** @throws InputError with every problem of the file. */
export function readAmendments(source: LogSource): Promise<RecordTable<Amendment>> {
  return readRecords(source, AMENDMENT_COLUMNS, (row) => {
    const logLine = row.count('rowLine') ?? row.count('logLine');
    const drop = row.count('drop');
    if ((logLine === null) === (drop === null)) {
      const found = drop === null ? 'neither a line nor a drop' : 'both a line and a drop';
      row.problem(
        'drop',
        'which-drop',
        `found ${found}, expected the one that names the row of the log; correct it`,
      );
    }
    const on = row.needed('on', 'the day of the amendment');
    if (on !== '' && spanOf(on, 'Z') === null) {
      row.problem(
        'on',
        'not-a-time',
        `on: found ${quote(on)}, expected a day such as 2026-03-10; correct it`,
      );
    }
    return {
      file: row.file,
      line: row.line,
      log: row.text('log'),
      logLine,
      drop,
      what: row
        .needed('what', 'the name of a column, such as outcome')
        .replace(/\s*\[[^\]]*\]$/u, '')
        .toLowerCase(),
      old: row.text('old') ?? '',
      new: row.text('new') ?? '',
      reason: row.needed('reason', 'a code of the catalogue, such as DROP-43'),
      by: row.needed('by', 'who amended it'),
      on,
    };
  });
}
