import type { Place } from '../finding.ts';
import type { WallTime } from './time-format.ts';
import type { Zone } from './zone.ts';

/** The time of one row of a log. */
export interface RowTime extends WallTime {
  readonly place: Place;
}

/** Times with their offsets, and what the clock left open. */
export interface ResolvedTimes {
  /** ISO 8601 by row; without an offset where the doubled hour leaves it open. */
  readonly iso: readonly (string | null)[];
  /** Rows in an hour that the zone leaves out. */
  readonly impossible: readonly RowTime[];
  /** Rows in the doubled hour of which the log does not say the first or the second time round. */
  readonly open: readonly RowTime[];
  /** Rows at which the clock goes back for no reason that the zone gives. */
  readonly back: readonly RowTime[];
}

/**
 * Gives the wall times of a log's rows their offsets. A rig writes its drops as they fall: where the clock goes back
 * inside the doubled hour of autumn, the rows before are the first time round and those after it the second. Rows of
 * that hour without such a step are left without an offset, since nothing says which hour was meant.
 *
 * @param zone null where every time has its own offset
 */
export function resolveTimes(rows: readonly (RowTime | null)[], zone: Zone | null): ResolvedTimes {
  const iso: (string | null)[] = rows.map(() => null);
  const impossible: RowTime[] = [];
  const open: RowTime[] = [];
  const back: RowTime[] = [];
  let last = Number.NEGATIVE_INFINITY;
  const settle = (i: number, row: RowTime, offset: number): void => {
    const instant = row.wall - offset * 60_000;
    if (instant < last) back.push(row);
    last = instant;
    iso[i] = isoTime(row, offset);
  };
  for (let i = 0; i < rows.length; i++) {
    const row = rows[i];
    if (!row) continue;
    const offsets = row.offset === null ? zone!.offsetsAt(row.wall) : [row.offset];
    if (offsets.length === 0) impossible.push(row);
    else if (offsets.length === 1) settle(i, row, offsets[0]!);
    else i = doubledHour(i, offsets) - 1;
  }
  return { iso, impossible, open, back };

  /** Settles the run of rows in the doubled hour that begins at `from`, and gives the row behind it. */
  function doubledHour(from: number, [first, second]: readonly number[]): number {
    const run: number[] = [];
    let to = from;
    for (; to < rows.length; to++) {
      const row = rows[to];
      if (!row) continue;
      if (row.offset !== null || zone!.offsetsAt(row.wall).length < 2) break;
      run.push(to);
    }
    const step = run.findIndex((at, k) => k > 0 && rows[at]!.wall < rows[run[k - 1]!]!.wall);
    for (const [k, at] of run.entries()) {
      const row = rows[at]!;
      if (step < 0) {
        open.push(row);
        iso[at] = isoTime(row, null);
      } else {
        settle(at, row, k < step ? first! : second!);
      }
    }
    return to;
  }
}

/** ISO 8601 of a wall time; without an offset where none is given. */
export function isoTime({ wall, fraction }: WallTime, offset: number | null): string {
  const clock = new Date(wall).toISOString().slice(0, 19) + (fraction === '' ? '' : `.${fraction}`);
  if (offset === null) return clock;
  const size = Math.abs(offset);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${clock}${offset < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}
