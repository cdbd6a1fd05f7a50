import type { LogSource } from './bytes.ts';
import type { Range } from './cells.ts';
import type { ColumnKind } from './columns.ts';
import { type RecordTable, readRecords } from './records.ts';
import type { Specimen } from './register.ts';
import { registerCell } from './register.ts';

/** What a specimen was mounted on and with, from one of its drops on; null where nobody noted it. */
export interface Mounting {
  readonly file: string;
  readonly line: number;
  readonly specimen: string;
  /** Number of the first drop that it holds for; null for all. */
  readonly fromDrop: number | null;
  readonly rim: string | null;
  /** mm, inside. */
  readonly rimWidth: number | null;
  readonly rimType: string | null;
  readonly tube: string | null;
  readonly tubeMaterial: string | null;
  readonly tubeBatch: string | null;
  /** ml; 0 is none. */
  readonly sealant: number | null;
  /** `none`, or which. */
  readonly insert: string | null;
  /** N·m, of the axle nuts. */
  readonly torque: number | null;
  /** Whether the height was set to nought on this tyre. */
  readonly zeroSet: boolean | null;
}

type Key = Exclude<keyof Mounting, 'file' | 'line'>;

/** The columns of the table of mountings. */
export const MOUNTING_COLUMNS: readonly ColumnKind<Key>[] = [
  { key: 'specimen', name: 'specimen', unit: null, isNeeded: true },
  { key: 'fromDrop', name: 'from drop', unit: null },
  { key: 'rim', name: 'rim', unit: null },
  { key: 'rimWidth', name: 'rim width', unit: 'mm' },
  { key: 'rimType', name: 'rim type', unit: null },
  { key: 'tube', name: 'tube', unit: null },
  { key: 'tubeMaterial', name: 'tube material', unit: null },
  { key: 'tubeBatch', name: 'tube batch', unit: null },
  { key: 'sealant', name: 'sealant', unit: 'ml' },
  { key: 'insert', name: 'insert', unit: null },
  { key: 'torque', name: 'torque', unit: 'Nm' },
  { key: 'zeroSet', name: 'zero set', unit: null },
];

const WIDTH: Range = { unit: 'mm', least: 0, most: 1000, isOpen: true };
const VOLUME: Range = { unit: 'ml', least: 0, most: 10_000 };
const TORQUE: Range = { unit: 'Nm', least: 0, most: 10_000 };
const YES_NO: ReadonlyMap<string, boolean> = new Map([
  ['yes', true],
  ['no', false],
]);

/** @throws InputError with every problem of the file. */
export function readMountings(source: LogSource): Promise<RecordTable<Mounting>> {
  return readRecords(source, MOUNTING_COLUMNS, (row) => ({
    file: row.file,
    line: row.line,
    specimen: row.needed('specimen', "the specimen's name"),
    fromDrop: row.count('fromDrop'),
    rim: row.text('rim'),
    rimWidth: row.quantity('rimWidth', WIDTH),
    rimType: row.text('rimType'),
    tube: row.text('tube'),
    tubeMaterial: row.text('tubeMaterial'),
    tubeBatch: row.text('tubeBatch'),
    sealant: row.quantity('sealant', VOLUME),
    insert: row.text('insert'),
    torque: row.quantity('torque', TORQUE),
    zeroSet: row.word('zeroSet', YES_NO),
  }));
}

/** The mounting that a specimen's own row in the register states; null where it states nothing of the kind. */
export function registeredMounting(row: Specimen): Mounting | null {
  const sealant = registerCell(row, 'sealant');
  const found = {
    rim: registerCell(row, 'rim'),
    rimWidth: row.measured['rim width'] ?? null,
    rimType: registerCell(row, 'rim type'),
    tube: registerCell(row, 'tube'),
    tubeMaterial: registerCell(row, 'tube material'),
    tubeBatch: registerCell(row, 'tube batch'),
    sealant: sealant !== null && /^\d+(?:\.\d+)?$/.test(sealant) ? Number(sealant) : null,
    insert: registerCell(row, 'insert'),
  };
  if (Object.values(found).every((value) => value === null)) return null;
  const { file, line, specimen } = row;
  return { file, line, specimen, fromDrop: null, ...found, torque: null, zeroSet: null };
}
