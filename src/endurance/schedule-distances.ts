import type { EnduranceBlock, EnduranceProtocol } from '../documents/kinds.ts';

/** A stretch at one speed: km, null where it does not go by distance; km/h. */
interface Run {
  readonly distance: number | null;
  readonly speed: number;
}

/** km of the whole schedule; null where a block does not go by distance. */
export function scheduleDistance(schedule: readonly EnduranceBlock[]): number | null {
  let whole = 0;
  for (const { distance } of schedule) {
    if (distance === null) return null;
    whole += distance;
  }
  return whole;
}

/** Hours of running from one distance to a further one, at the set speeds; null beyond runs that go by distance. */
export function hoursBetween(from: number, to: number, runs: readonly Run[]): number | null {
  let begin = 0;
  let hours = 0;
  for (const { distance, speed } of runs) {
    if (distance === null) return null;
    const end = begin + distance;
    hours += Math.max(0, Math.min(end, to) - Math.max(begin, from)) / speed;
    if (to <= end) return hours;
    begin = end;
  }
  return null;
}

/** Kilometres at which a test is to be looked at, up to its end, the end not among them. */
export function inspectionsDue({ inspections, schedule }: EnduranceProtocol): number[] {
  if (!inspections) return [];
  const end = schedule.reduce(
    (sum, { distance, duration, speed }) => sum + (distance ?? (speed.value * duration!) / 3600),
    0,
  );
  const { at, every } = inspections;
  const repeated =
    every === null ? [] : Array.from({ length: Math.floor(end / every) }, (_, i) => (i + 1) * every);
  return [...new Set([...at, ...repeated])].filter((km) => km < end).sort((a, b) => a - b);
}
