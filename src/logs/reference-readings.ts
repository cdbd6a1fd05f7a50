import { quote } from '../problem/echo.ts';
import type { LogSource } from './bytes.ts';
import type { Column, ColumnKind } from './columns.ts';
import { type RecordRow, type RecordTable, readRecords } from './records.ts';
import { spanOf } from './span.ts';

/** One reading of a check standard: a reference tyre, a check mass, or whatever else is measured again and again. */
export interface ReferenceReading {
  readonly file: string;
  readonly line: number;
  /** As written: a day, or an ISO 8601 time. */
  readonly time: string;
  /** Milliseconds since 1970 UTC; the beginning of a day. */
  readonly instant: number;
  readonly value: number;
  readonly unit: string | null;
  /** Name of the check standard, else the kind of check; null where the table has one thing only. */
  readonly standard: string | null;
  /** `id@config`; null for the only rig. */
  readonly rig: string | null;
  /** Batch of the reference tyres. */
  readonly batch: string | null;
  /** What readings taken together share; null where each stands for itself. */
  readonly occasion: string | null;
  /** Cause and decision behind a signal at this reading; null as a rule. */
  readonly settled: string | null;
}

type Key = 'time' | 'value' | 'check' | 'standard' | 'rig' | 'batch' | 'occasion' | 'settled' | 'other';

const VALUE = { least: -1e12, most: 1e12 };
const NO_READING: ReadonlySet<string> = new Set(['gauge', 'base']);
/** Of the table of rig checks: known, and of no use to a chart. */
const BESIDE = ['result', 'lower', 'upper', 'gauge', 'due', 'by', 'specimen', 'remark', 'operator'] as const;

/**
 * Reads the readings of check standards, from a table of their own or from that of the rig checks; rows without a
 * value, and those of gauges and of the base, are no readings. Without a column `value` the only column with a unit is
 * the value.
 *
 * @param column the column that is to be read as the value; null leaves it to the header
 * @throws InputError with every problem of the file
 */
export async function readReferenceReadings(
  source: LogSource,
  column: string | null,
): Promise<RecordTable<ReferenceReading>> {
  const table = await readRecords(source, (header) => kindsOf(header, column), readingOf);
  return { ...table, records: table.records.filter((reading) => reading !== null) };
}

function kindsOf(header: readonly Column[], asked: string | null): ColumnKind<Key>[] {
  const names = header.map(({ name }) => name);
  const called = (...choices: readonly string[]) =>
    choices.find((choice) => names.includes(choice)) ?? choices[0]!;
  const measured = header.filter(({ unit }) => unit !== null);
  const only = measured.length === 1 && !names.includes('value') ? measured[0]!.name : 'value';
  return [
    { key: 'time', name: called('time', 'date'), unit: null, isNeeded: true },
    { key: 'value', name: asked?.toLowerCase() ?? only, unit: null, hasAnyUnit: true, isNeeded: true },
    { key: 'check', name: 'check', unit: null },
    { key: 'standard', name: 'standard', unit: null },
    { key: 'rig', name: 'rig', unit: null },
    { key: 'batch', name: 'batch', unit: null },
    { key: 'occasion', name: called('occasion', 'subgroup', 'group'), unit: null },
    { key: 'settled', name: 'settled', unit: null },
    ...BESIDE.map((name) => ({ key: 'other' as const, name, unit: null, hasAnyUnit: true })),
  ];
}

function readingOf(row: RecordRow<Key>): ReferenceReading | null {
  const check = row.text('check');
  const unit = row.unitOf('value');
  const value = row.quantity('value', { ...VALUE, unit: unit ?? '1' });
  if (value === null || (check !== null && NO_READING.has(check))) return null;
  const time = row.needed('time', 'the day or the time of the reading');
  // A time without an offset is taken as it stands: what counts here is the order, and the day.
  const span = spanOf(time, 'Z');
  if (time !== '' && span === null) {
    const message = `time: found ${quote(time)}, expected a day such as 2026-03-09 or ISO 8601, such as 2026-03-09T07:30+01:00; correct it`;
    row.problem('time', 'not-a-time', message);
  }
  return {
    file: row.file,
    line: row.line,
    time,
    instant: span?.from ?? 0,
    value,
    unit,
    standard: row.text('standard') ?? check,
    rig: row.text('rig'),
    batch: row.text('batch'),
    occasion: row.text('occasion'),
    settled: row.text('settled'),
  };
}
