import type { LogSource } from './bytes.ts';
import type { Range } from './cells.ts';
import type { ColumnKind } from './columns.ts';
import type { ExportProfile } from './export/profile.ts';
import { recordForm } from './export/record-form.ts';
import { type RecordRow, type RecordTable, readRecords } from './records.ts';

/** One reading or finding of an inspection of a tyre on the drum. */
export interface Inspection {
  readonly file: string;
  readonly line: number;
  readonly specimen: string;
  /** km. */
  readonly distance: number;
  readonly kind: string | null;
  readonly zone: string | null;
  readonly finding: string | null;
  /** Marked point that was read. */
  readonly point: string | null;
  /** mm. */
  readonly treadDepth: number | null;
  readonly state: 'hot' | 'cold' | null;
  /** Path of a photo. */
  readonly photo: string | null;
}

type Key = 'specimen' | 'distance' | 'kind' | 'zone' | 'finding' | 'point' | 'treadDepth' | 'state' | 'photo';

/** The columns of the table of inspections that mean something to tirelab. */
export const INSPECTION_COLUMNS: readonly ColumnKind<Key>[] = [
  { key: 'specimen', name: 'specimen', unit: null, isNeeded: true },
  { key: 'distance', name: 'distance', unit: 'km', isNeeded: true },
  { key: 'kind', name: 'kind', unit: null },
  { key: 'zone', name: 'zone', unit: null },
  { key: 'finding', name: 'finding', unit: null },
  { key: 'point', name: 'point', unit: null },
  { key: 'treadDepth', name: 'tread depth', unit: 'mm' },
  { key: 'state', name: 'state', unit: null },
  { key: 'photo', name: 'photo', unit: null },
];

const DISTANCE: Range = { unit: 'km', least: 0, most: 1e6 };
const DEPTH: Range = { unit: 'mm', least: 0, most: 100 };
const STATES: ReadonlyMap<string, 'hot' | 'cold'> = new Map([
  ['hot', 'hot'],
  ['cold', 'cold'],
]);

/**
 * @param profile how the lab writes the table; null for the plain form
 * @throws InputError with every problem of the file.
 */
export function readInspections(
  source: LogSource,
  profile: ExportProfile | null = null,
): Promise<RecordTable<Inspection>> {
  const take = (row: RecordRow<Key>): Inspection => {
    const distance = row.quantity('distance', DISTANCE);
    row.needed('distance', 'the kilometres at which it was looked at');
    return {
      file: row.file,
      line: row.line,
      specimen: row.needed('specimen', "the specimen's name"),
      distance: distance ?? Number.NaN,
      kind: row.text('kind'),
      zone: row.text('zone'),
      finding: row.text('finding'),
      point: row.text('point'),
      treadDepth: row.quantity('treadDepth', DEPTH),
      state: row.word('state', STATES),
      photo: row.text('photo'),
    };
  };
  return readRecords(source, INSPECTION_COLUMNS, take, recordForm(profile, INSPECTION_COLUMNS));
}
