import { quote } from '../problem/echo.ts';
import type { LogSource } from './bytes.ts';
import type { ColumnKind } from './columns.ts';
import { instantOf } from './instant.ts';
import { type RecordTable, readRecords } from './records.ts';

/**
 * One check of a rig. `daily` is the go or no-go before the tests of a day, `reference` a hit set on a reference tyre
 * or any other value held against control limits, `velocity`, `height` and `mass` the same for what `tirelab rig` looks at, `base` a look
 * at base and bolts, `gauge` the calibration of a gauge.
 */
export type CheckKind = 'daily' | 'reference' | 'velocity' | 'height' | 'mass' | 'base' | 'gauge';

export interface RigCheck {
  readonly file: string;
  readonly line: number;
  readonly kind: CheckKind;
  /** ISO 8601 with its offset, as written. */
  readonly time: string;
  readonly instant: number;
  /** `id@config`; null for the run's only rig. */
  readonly rig: string | null;
  /** Whether it was good: by the result that was noted and by the limits. */
  readonly passed: boolean;
  /** The value and its control limits, as written; null where none was noted. */
  readonly value: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  /** Name of the gauge, and the last instant that its calibration holds. */
  readonly gauge: string | null;
  readonly due: number | null;
  readonly by: string | null;
  /** How a failed check was settled: cause and decision. Null while it is open. */
  readonly settled: string | null;
}

type Key =
  | 'time'
  | 'check'
  | 'rig'
  | 'result'
  | 'value'
  | 'lower'
  | 'upper'
  | 'gauge'
  | 'due'
  | 'by'
  | 'settled';

/** The columns of the table of rig checks. Value and limits are in whatever unit the check has. */
export const CHECK_COLUMNS: readonly ColumnKind<Key>[] = [
  { key: 'time', name: 'time', unit: null, isNeeded: true },
  { key: 'check', name: 'check', unit: null, isNeeded: true },
  { key: 'rig', name: 'rig', unit: null },
  { key: 'result', name: 'result', unit: null },
  { key: 'value', name: 'value', unit: null, hasAnyUnit: true },
  { key: 'lower', name: 'lower', unit: null },
  { key: 'upper', name: 'upper', unit: null },
  { key: 'gauge', name: 'gauge', unit: null },
  { key: 'due', name: 'due', unit: null },
  { key: 'by', name: 'by', unit: null },
  { key: 'settled', name: 'settled', unit: null },
];

const KINDS: ReadonlyMap<string, CheckKind> = new Map(
  (['daily', 'reference', 'velocity', 'height', 'mass', 'base', 'gauge'] as const).map((kind) => [
    kind,
    kind,
  ]),
);
const RESULTS: ReadonlyMap<string, boolean> = new Map([
  ['passed', true],
  ['failed', false],
]);
const NUMBER = { unit: '1', least: -1e12, most: 1e12 };

/** @throws InputError with every problem of the file. */
export function readChecks(source: LogSource): Promise<RecordTable<RigCheck>> {
  return readRecords(source, CHECK_COLUMNS, (row) => {
    const time = row.needed('time', 'the time of the check');
    const instant = instantOf(time);
    if (time !== '' && instant === null) {
      const message = `time: found ${quote(time)}, expected ISO 8601 with its offset, such as 2026-03-09T07:30+01:00; correct it`;
      row.problem('time', 'not-a-time', message);
    }
    const due = row.text('due');
    const dueAt = due === null ? null : (instantOf(due) ?? instantOf(`${due}T23:59:59Z`));
    if (due !== null && dueAt === null) {
      row.problem(
        'due',
        'not-a-time',
        `due: found ${quote(due)}, expected a day such as 2026-12-31; correct it`,
      );
    }
    row.needed('check', `one of ${[...KINDS.keys()].join(', ')}`);
    const value = row.quantity('value', { ...NUMBER, unit: row.unitOf('value') ?? NUMBER.unit });
    const lower = row.quantity('lower', NUMBER);
    const upper = row.quantity('upper', NUMBER);
    const isOut = value !== null && ((lower !== null && value < lower) || (upper !== null && value > upper));
    return {
      file: row.file,
      line: row.line,
      kind: row.word('check', KINDS) ?? 'daily',
      time,
      instant: instant ?? 0,
      rig: row.text('rig'),
      passed: (row.word('result', RESULTS) ?? true) && !isOut,
      value,
      lower,
      upper,
      gauge: row.text('gauge'),
      due: dueAt,
      by: row.text('by'),
      settled: row.text('settled'),
    };
  });
}
