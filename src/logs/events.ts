import type { LogSource } from './bytes.ts';
import type { ColumnKind } from './columns.ts';
import type { ExportProfile } from './export/profile.ts';
import { recordForm } from './export/record-form.ts';
import { type RecordRow, type RecordTable, readRecords } from './records.ts';

/** Something that was done to a drum test, as the lab wrote it down. */
export interface DrumEvent {
  readonly file: string;
  readonly line: number;
  /** Milliseconds since 1970. */
  readonly time: number;
  /** Null where the whole drum is meant. */
  readonly specimen: string | null;
  readonly event: string;
  readonly value: string | null;
}

type Key = 'time' | 'specimen' | 'event' | 'value';

/** The columns of the table of events. */
export const EVENT_COLUMNS: readonly ColumnKind<Key>[] = [
  { key: 'time', name: 'time', unit: null, isNeeded: true },
  { key: 'specimen', name: 'specimen', unit: null },
  { key: 'event', name: 'event', unit: null, isNeeded: true },
  { key: 'value', name: 'value', unit: null },
];

/**
 * @param profile how the lab writes the table; null for the plain form
 * @throws InputError with every problem of the file.
 */
export function readEvents(
  source: LogSource,
  profile: ExportProfile | null = null,
): Promise<RecordTable<DrumEvent>> {
  const take = (row: RecordRow<Key>): DrumEvent => {
    row.needed('time', 'when it was');
    return {
      file: row.file,
      line: row.line,
      time: row.instant('time') ?? Number.NaN,
      specimen: row.text('specimen'),
      event: row.needed('event', 'what was done'),
      value: row.text('value'),
    };
  };
  return readRecords(source, EVENT_COLUMNS, take, recordForm(profile, EVENT_COLUMNS));
}
