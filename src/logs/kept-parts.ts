import { quote } from '../problem/echo.ts';
import { beginOfDay } from '../quantity/calendar.ts';
import type { LogSource } from './bytes.ts';
import type { ColumnKind } from './columns.ts';
import { type RecordTable, readRecords } from './records.ts';

/** A part that the lab keeps after a test: a cut tyre, a casing, a tube. */
export interface KeptPart {
  readonly file: string;
  readonly line: number;
  readonly specimen: string;
  readonly part: string;
  /** Shelf, box, house: where to look. */
  readonly place: string;
  /** The last day on which it must be there; null where the archive's day holds. */
  readonly until: string | null;
}

type Key = 'specimen' | 'part' | 'place' | 'until';

/** The columns of the table of kept parts. */
export const KEPT_PART_COLUMNS: readonly ColumnKind<Key>[] = [
  { key: 'specimen', name: 'specimen', unit: null, isNeeded: true },
  { key: 'part', name: 'part', unit: null, isNeeded: true },
  { key: 'place', name: 'place', unit: null, isNeeded: true },
  { key: 'until', name: 'kept until', unit: null },
];

/** @throws InputError with every problem of the file. */
export function readKeptParts(source: LogSource): Promise<RecordTable<KeptPart>> {
  return readRecords(source, KEPT_PART_COLUMNS, (row) => {
    const until = row.text('until');
    if (until !== null && beginOfDay(until) === null) {
      const message = `kept until: found ${quote(until)}, expected a day such as 2036-03-31; correct it`;
      row.problem('until', 'not-a-day', message);
    }
    return {
      file: row.file,
      line: row.line,
      specimen: row.needed('specimen', "the specimen's name"),
      part: row.needed('part', 'what is kept, such as casing'),
      place: row.needed('place', 'where it lies'),
      until,
    };
  });
}
