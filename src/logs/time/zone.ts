import { offsetOf } from './time-format.ts';

const OFFSET = /^(?:Z|[+-]\d\d:?\d\d)$/;
const MINUTE = 60_000;
const DAY = 1440 * MINUTE;
/** Clocks are put forward and back at a quarter of an hour everywhere. */
const BLOCK = 15 * MINUTE;

/** Where a clock stands: it gives the offsets that its wall time can have. */
export interface Zone {
  readonly name: string;
  /** Minutes east of UTC, the earlier instant first: none in the hour that is left out, two in the doubled one. */
  offsetsAt(wall: number): readonly number[];
  /** Minutes east of UTC at an instant. */
  offsetAt(instant: number): number;
}

/** A zone by its IANA name (`Europe/Berlin`) or a fixed offset (`+01:00`); null where there is none such. */
export function zoneOf(name: string): Zone | null {
  if (OFFSET.test(name)) {
    const offsets = [offsetOf(name)];
    return { name, offsetsAt: () => offsets, offsetAt: () => offsets[0]! };
  }
  const offset = offsetReader(name);
  if (!offset) return null;
  const known = new Map<number, readonly number[]>();
  return {
    name,
    offsetsAt(wall) {
      const block = Math.floor(wall / BLOCK);
      let offsets = known.get(block);
      if (!offsets) {
        const candidates = new Set([offset(wall - DAY), offset(wall + DAY)]);
        offsets = [...candidates].filter((it) => offset(wall - it * MINUTE) === it).toSorted((a, b) => b - a);
        known.set(block, offsets);
      }
      return offsets;
    },
    offsetAt: offset,
  };
}

/** Minutes east of UTC at an instant. */
function offsetReader(name: string): ((instant: number) => number) | null {
  let format: Intl.DateTimeFormat;
  try {
    format = new Intl.DateTimeFormat('en-US', { timeZone: name, timeZoneName: 'longOffset' });
  } catch {
    return null;
  }
  return (instant) => {
    const text = format.formatToParts(instant).find(({ type }) => type === 'timeZoneName')!.value;
    const found = /([+-]\d\d:\d\d)/.exec(text);
    return found ? offsetOf(found[1]!) : 0;
  };
}
