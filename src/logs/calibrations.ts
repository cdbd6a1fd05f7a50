import { quote } from '../problem/echo.ts';
import type { LogSource } from './bytes.ts';
import type { Column, ColumnKind } from './columns.ts';
import { type RecordRow, type RecordTable, readRecords } from './records.ts';
import { spanOf } from './span.ts';

/** One calibration or intermediate check of an instrument. */
export interface Calibration {
  readonly file: string;
  readonly line: number;
  readonly instrument: string;
  readonly quantity: string | null;
  /** As written: a day, or an ISO 8601 time. */
  readonly time: string;
  /** ms since 1970: when it was made, and the last instant of the day to which it holds (null where none was set). */
  readonly made: number;
  readonly due: string | null;
  readonly holdsTo: number | null;
  readonly passed: boolean;
  readonly certificate: string | null;
  /** How a failed check was settled; null while it is open. */
  readonly settled: string | null;
}

type Key =
  | 'instrument'
  | 'quantity'
  | 'time'
  | 'due'
  | 'result'
  | 'certificate'
  | 'settled'
  | 'check'
  | 'other';

const RESULTS: ReadonlyMap<string, boolean> = new Map([
  ['passed', true],
  ['failed', false],
]);
/** Written in registers for people, of no use to a date. */
const BESIDE = [
  'correction',
  'uncertainty',
  'range',
  'resolution',
  'value',
  'lower',
  'upper',
  'rig',
  'by',
  'remark',
];

/**
 * Reads a calibration register: a row for each calibration or check of an instrument. The table of rig checks serves too: its rows of
 * gauges are read.
 *
 * @throws InputError with every problem of the file
 */
export async function readCalibrations(source: LogSource): Promise<RecordTable<Calibration>> {
  const table = await readRecords(source, kindsOf, calibrationOf);
  return { ...table, records: table.records.filter((one) => one !== null) };
}

function kindsOf(header: readonly Column[]): ColumnKind<Key>[] {
  const names = header.map(({ name }) => name);
  const called = (...choices: readonly string[]) =>
    choices.find((choice) => names.includes(choice)) ?? choices[0]!;
  return [
    { key: 'instrument', name: called('instrument', 'gauge'), unit: null, isNeeded: true },
    { key: 'quantity', name: 'quantity', unit: null },
    { key: 'time', name: called('time', 'date', 'calibrated', 'checked'), unit: null, isNeeded: true },
    { key: 'due', name: 'due', unit: null },
    { key: 'result', name: 'result', unit: null },
    { key: 'certificate', name: 'certificate', unit: null },
    { key: 'settled', name: 'settled', unit: null },
    { key: 'check', name: 'check', unit: null },
    ...BESIDE.map((name) => ({ key: 'other' as const, name, unit: null, hasAnyUnit: true })),
  ];
}

function calibrationOf(row: RecordRow<Key>): Calibration | null {
  const check = row.text('check');
  if (check !== null && check !== 'gauge') return null;
  const time = row.needed('time', 'the day of the calibration or check');
  const made = time === '' ? null : dated(row, 'time', time);
  const due = row.text('due');
  const holds = due === null ? null : dated(row, 'due', due);
  if (made !== null && holds !== null && holds.to < made.from) {
    const message = `due: found ${quote(due!)}, expected a day after ${quote(time)}, on which it was made; correct one of them`;
    row.problem('due', 'dates-not-ordered', message);
  }
  return {
    file: row.file,
    line: row.line,
    instrument: row.needed('instrument', 'the name of the instrument'),
    quantity: row.text('quantity'),
    time,
    made: made?.from ?? 0,
    due,
    holdsTo: holds?.to ?? null,
    passed: row.word('result', RESULTS) ?? true,
    certificate: row.text('certificate'),
    settled: row.text('settled'),
  };
}

function dated(row: RecordRow<Key>, key: Key, text: string) {
  const span = spanOf(text, 'Z');
  if (span === null) {
    const message = `${key}: found ${quote(text)}, expected a day such as 2026-12-31, or ISO 8601; correct it`;
    row.problem(key, 'not-a-time', message);
  }
  return span;
}
