import { quote } from '../problem/echo.ts';
import type { LogSource } from './bytes.ts';
import type { ColumnKind } from './columns.ts';
import { instantOf } from './instant.ts';
import { type RecordTable, readRecords } from './records.ts';

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

/** @throws InputError with every problem of the file. */
export function readEvents(source: LogSource): Promise<RecordTable<DrumEvent>> {
  return readRecords(source, EVENT_COLUMNS, (row) => {
    const written = row.needed('time', 'when it was');
    const time = written === '' ? null : instantOf(written);
    if (written !== '' && time === null) {
      const message = `time: found ${quote(written)}, expected an ISO 8601 time with its offset, such as 2026-03-02T05:00:00+01:00; write it so`;
      row.problem('time', 'bad-time', message);
    }
    return {
      file: row.file,
      line: row.line,
      time: time ?? Number.NaN,
      specimen: row.text('specimen'),
      event: row.needed('event', 'what was done'),
      value: row.text('value'),
    };
  });
}
