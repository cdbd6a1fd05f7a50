import type { Zone } from '../logs/time/zone.ts';

const DAY = 86_400_000;
const HOUR = 3_600_000;
const MINUTE = 60_000;
/** From ten in the evening for eight hours, in milliseconds (common practice of shifts, no source). */
export const NIGHT = { begin: 22 * HOUR, length: 8 * HOUR } as const;

/** A stretch of time; milliseconds. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** The nights between two instants by the clock of a zone, 22 to 6 h, cut where they begin before or end after. */
export function nightsBetween(first: number, last: number, zone: Zone): Stretch[] {
  const nights: Stretch[] = [];
  for (let day = Math.floor(first / DAY) - 2; day <= Math.floor(last / DAY) + 1; day += 1) {
    const from = Math.max(first, instantOf(day * DAY + NIGHT.begin, zone));
    const to = Math.min(last, instantOf(day * DAY + NIGHT.begin + NIGHT.length, zone));
    if (to > from) nights.push({ from, to });
  }
  return nights;
}

/** The instant at which the clock of a zone shows a wall time; in an hour that is left out, the one after it. */
function instantOf(wall: number, zone: Zone): number {
  const [offset = zone.offsetsAt(wall - HOUR)[0] ?? 0] = zone.offsetsAt(wall);
  return wall - offset * MINUTE;
}
