import type { LogSource } from './bytes.ts';
import type { Column, ColumnKind } from './columns.ts';
import { type RecordRow, type RecordTable, readRecords } from './records.ts';
import { spanOf } from './span.ts';

/** What let the air out, by what was found. Rim and valve are not the tyre's. */
export const FLAT_CAUSES = ['pinch', 'cut', 'thorn', 'rim', 'valve', 'unknown'] as const;
export type FlatCause = (typeof FLAT_CAUSES)[number];

/** One row of a ride log. Riders are told apart by their names and are named nowhere else. */
export interface Ride {
  readonly line: number;
  readonly rider: string;
  readonly construction: string;
  /** What the counter belongs to: tyre, else bike and position, else the rider alone. */
  readonly counter: string;
  /** km ridden since the row before of the same counter; 0 for the first one of an odometer. */
  readonly distance: number;
  readonly flats: number;
  readonly cause: FlatCause | null;
  readonly position: string | null;
  readonly terrain: string | null;
  readonly bike: string | null;
  /** `2026-05`; null where no day was noted. */
  readonly month: string | null;
  /** bar */
  readonly pressure: number | null;
}

type Key =
  | 'rider'
  | 'construction'
  | 'distance'
  | 'odometer'
  | 'flats'
  | 'cause'
  | 'tyre'
  | 'position'
  | 'terrain'
  | 'bike'
  | 'date'
  | 'pressure'
  | 'other';

const KM = { unit: 'km', least: 0, most: 1e7 };
const BAR = { unit: 'bar', least: 0, most: 100 };
const CAUSES: ReadonlyMap<string, FlatCause> = new Map(FLAT_CAUSES.map((cause) => [cause, cause]));

/**
 * Reads a ride log: a row for each ride with its `distance`, or for each reading of an `odometer`; a flat by its cause on the row.
 * No message names a rider.
 *
 * @throws InputError with every problem of the file; an odometer that goes back is one, naming both lines
 */
export function readRides(source: LogSource): Promise<RecordTable<Ride>> {
  const counters = new Map<string, { readonly reading: number; readonly line: number }>();
  let hasOdometer = false;
  return readRecords(
    source,
    (header) => {
      hasOdometer = header.some(({ name }) => name === 'odometer');
      return kindsOf(header, hasOdometer);
    },
    (row) => {
      const rider = row.needed('rider', 'the rider, by a code');
      const construction = row.needed('construction', 'the construction, id or id@revision');
      const [tyre, bike, position] = [row.text('tyre'), row.text('bike'), row.text('position')];
      const counter = JSON.stringify([rider, construction, tyre ?? `${bike} ${position}`]);
      const distance = hasOdometer ? driven(row, counter, counters) : ridden(row);
      const cause = row.word('cause', CAUSES);
      const date = row.text('date');
      const day = date === null ? null : spanOf(date, 'Z');
      if (date !== null && day === null) {
        row.problem('date', 'not-a-time', 'date: expected a day such as 2026-05-09; correct it');
      }
      return {
        line: row.line,
        rider,
        construction,
        counter,
        distance,
        flats: row.count('flats') ?? (cause === null ? 0 : 1),
        cause,
        position,
        terrain: row.text('terrain'),
        bike,
        month: day === null ? null : date!.slice(0, 7),
        pressure: row.quantity('pressure', BAR),
      };
    },
  );
}

function kindsOf(header: readonly Column[], hasOdometer: boolean): ColumnKind<Key>[] {
  const date = ['date', 'time'].find((name) => header.some((one) => one.name === name)) ?? 'date';
  return [
    { key: 'rider', name: 'rider', unit: null, isNeeded: true },
    { key: 'construction', name: 'construction', unit: null, isNeeded: true },
    { key: 'distance', name: 'distance', unit: 'km', isNeeded: !hasOdometer },
    { key: 'odometer', name: 'odometer', unit: 'km' },
    { key: 'flats', name: 'flats', unit: null },
    { key: 'cause', name: 'cause', unit: null },
    { key: 'tyre', name: 'tyre', unit: null },
    { key: 'position', name: 'position', unit: null },
    { key: 'terrain', name: 'terrain', unit: null },
    { key: 'bike', name: 'bike', unit: null },
    { key: 'date', name: date, unit: null },
    { key: 'pressure', name: 'pressure', unit: 'bar' },
    ...['photo', 'remark'].map((name) => ({ key: 'other' as const, name, unit: null })),
  ];
}

function ridden(row: RecordRow<Key>): number {
  const distance = row.quantity('distance', KM);
  if (distance === null) row.needed('distance', 'the distance of the ride');
  return distance ?? 0;
}

function driven(
  row: RecordRow<Key>,
  counter: string,
  counters: Map<string, { readonly reading: number; readonly line: number }>,
): number {
  const reading = row.quantity('odometer', KM);
  if (reading === null) {
    row.needed('odometer', 'the reading of the odometer');
    return 0;
  }
  const before = counters.get(counter);
  counters.set(counter, { reading, line: row.line });
  if (before === undefined) return 0;
  if (reading >= before.reading) return reading - before.reading;
  const message = `odometer: found ${reading} km, expected ${before.reading} km (line ${before.line}) or more: a distance does not go back; correct it, or give a new tyre or a new counter a name of its own in the column "tyre"`;
  row.problem('odometer', 'distance-goes-back', message);
  return 0;
}
