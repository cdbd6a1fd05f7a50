import { instantOf } from '../instant.ts';
import { offsetOf } from '../span.ts';
import { isoTime } from './row-times.ts';
import { offsetOf as minutesOf } from './time-format.ts';
import type { Zone } from './zone.ts';

/** ms that a clock may differ from the counter: set by a minute, or written without seconds. Common practice, no source. */
const SAME = 90_000;

/**
 * Rebuilds times from the seconds that a rig counts whatever its clock does. Where the clock jumps against the counter,
 * says nothing, or does not tell the two hours of autumn apart, the time is the last good one and what was counted
 * since; a counter that begins anew leaves the clock alone.
 *
 * @param iso times by the clock, by row
 * @param counters s, by row
 * @param zone of the clock; null where every time has its own offset
 * @returns the times, and the rows whose time is not the clock's
 */
export function rebuildTimes(
  iso: readonly (string | null)[],
  counters: readonly (number | null)[],
  zone: Zone | null,
): { readonly iso: readonly (string | null)[]; readonly rebuilt: readonly number[] } {
  const times = [...iso];
  const rebuilt: number[] = [];
  let good: { instant: number; counter: number; offset: number } | null = null;
  for (const [i, counter] of counters.entries()) {
    const text = iso[i] ?? null;
    const instant = text === null ? null : instantOf(text);
    if (counter === null) continue;
    const expected: number | null = good === null ? null : good.instant + (counter - good.counter) * 1000;
    const isOff = instant === null || Math.abs(instant - (expected ?? instant)) > SAME;
    if (good !== null && expected !== null && counter >= good.counter && isOff) {
      const offset: number = zone === null ? good.offset : zone.offsetAt(expected);
      times[i] = isoOf(expected, offset);
      rebuilt.push(i);
      good = { instant: expected, counter, offset };
    } else if (instant !== null) {
      good = { instant, counter, offset: minutesOf(offsetOf(text!)) };
    }
  }
  return { iso: times, rebuilt };
}

function isoOf(instant: number, offset: number): string {
  const wall = instant + offset * 60_000;
  const rest = ((wall % 1000) + 1000) % 1000;
  const fraction = rest === 0 ? '' : String(Math.round(rest)).padStart(3, '0').replace(/0+$/, '');
  return isoTime({ wall: wall - rest, fraction, offset }, offset);
}
