import type { LogSource } from './bytes.ts';
import type { ColumnKind } from './columns.ts';
import { type RecordTable, readRecords } from './records.ts';

/** One row of a rig's check: a fall with its speed, a height against a reference, a weighing; null where it is none of that. */
export interface RigReading {
  readonly file: string;
  readonly line: number;
  /** As written; null where none was noted. */
  readonly time: string | null;
  /** mm above first contact, by the rig's scale. */
  readonly height: number | null;
  /** mm by a reference. */
  readonly reference: number | null;
  /** m/s, as the rig's gates give it. */
  readonly velocity: number | null;
  /** mm of flag along the fall, and s for which it covers the beam. */
  readonly flag: number | null;
  readonly covered: number | null;
  /** mm above contact at which the speed is taken; 0 where it is not stated. */
  readonly gate: number | null;
  /** kg */
  readonly mass: number | null;
}

type Key = 'time' | 'height' | 'reference' | 'velocity' | 'flag' | 'gateTime' | 'gate' | 'mass';

const COLUMNS: readonly ColumnKind<Key>[] = [
  { key: 'time', name: 'time', unit: null },
  { key: 'height', name: 'height', unit: 'mm' },
  { key: 'reference', name: 'reference height', unit: 'mm' },
  { key: 'velocity', name: 'velocity', unit: 'm/s' },
  { key: 'flag', name: 'flag', unit: 'mm' },
  { key: 'gateTime', name: 'gate time', unit: 's' },
  { key: 'gate', name: 'gate height', unit: 'mm' },
  { key: 'mass', name: 'mass', unit: 'kg' },
];

const LENGTH = { unit: 'mm', least: 0, most: 10_000 };
const FLAG = { ...LENGTH, isOpen: true };

/** @throws InputError with every problem of the file. */
export function readRigReadings(source: LogSource): Promise<RecordTable<RigReading>> {
  return readRecords(source, COLUMNS, (row) => ({
    file: row.file,
    line: row.line,
    time: row.text('time'),
    height: row.quantity('height', LENGTH),
    reference: row.quantity('reference', LENGTH),
    velocity: row.quantity('velocity', { unit: 'm/s', least: 0, most: 100, isOpen: true }),
    flag: row.quantity('flag', FLAG),
    covered: row.quantity('gateTime', { unit: 's', least: 0, most: 100, isOpen: true }),
    gate: row.quantity('gate', LENGTH),
    mass: row.quantity('mass', { unit: 'kg', least: 0, most: 1000, isOpen: true }),
  }));
}
