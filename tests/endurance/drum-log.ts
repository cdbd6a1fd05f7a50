import type { EnduranceBlock } from '../../src/documents/kinds.ts';
import { readQuantity } from '../../src/quantity/quantity.ts';

const quantity = (text: string | undefined, unit: string) => {
  if (text === undefined) return null;
  const reading = readQuantity(text, unit);
  if (!reading.ok) throw new Error(reading.why);
  return reading.value;
};

/** A block of a schedule as a protocol would give it. */
export function block(
  name: string,
  limits: {
    distance?: number;
    duration?: number;
    speed: string;
    load: string;
    pressure?: string;
    temperature?: string;
  },
): EnduranceBlock {
  return {
    block: name,
    distance: limits.distance ?? null,
    duration: limits.duration ?? null,
    speed: quantity(limits.speed, 'km/h')!,
    load: quantity(limits.load, 'N')!,
    pressure: quantity(limits.pressure, 'bar'),
    temperature: quantity(limits.temperature, '°C'),
  };
}

/** Numbers between 0 and 1 that are the same for the same seed (a linear congruential generator: any will do). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** One row of a log as the reference sees it; null where the cell is empty. */
export interface PlainRow {
  /** Milliseconds since 1970. */
  readonly time: number;
  readonly speed: number | null;
  readonly load: number | null;
  readonly pressure: number | null;
  /** km. */
  readonly distance: number | null;
  readonly state: string;
}

export const HEADER = 'time,speed [km/h],load [N],pressure [bar],distance [km],state';

export function lineOf(row: PlainRow): string {
  const time = new Date(row.time).toISOString();
  const cell = (value: number | null, decimals: number): string => value?.toFixed(decimals) ?? '';
  return [
    time,
    cell(row.speed, 2),
    cell(row.load, 1),
    cell(row.pressure, 2),
    cell(row.distance, 3),
    row.state,
  ].join(',');
}

/**
 * A log of 1 Hz with everything that happens on a drum: stops, gaps, empty cells, a clock that steps, a counter
 * that falls, rows written twice, values outside their limits. Invented; values are whole hundredths and the like,
 * as they stand in the file.
 */
export function randomRows(seed: number, count: number): PlainRow[] {
  const random = seeded(seed);
  const rows: PlainRow[] = [];
  let time = Date.UTC(2026, 9, 24, 23, 58, 0) + Math.floor(random() * 1000);
  let metres = Math.floor(random() * 1e5);
  let stop = 0;
  for (let i = 0; i < count; i++) {
    const event = random();
    if (stop > 0) stop--;
    else if (event < 0.004) stop = 5 + Math.floor(random() * 90);
    else if (event < 0.006) {
      time += 1000 * Math.floor(random() * 300);
      metres += Math.floor(random() * 3000);
    } else if (event < 0.007) time += 1000 * Math.floor(random() * 5000);
    else if (event < 0.008) time -= 3_600_000;
    else if (event < 0.009) metres = Math.floor(random() * 10);
    else if (event < 0.01) metres += 10_000;
    const last = rows.at(-1);
    if (event > 0.985 && last) {
      rows.push(last);
      continue;
    }
    time += random() < 0.02 ? 2000 : 1000;
    const speed = stop > 0 ? 0 : Math.round((30 + (random() - 0.5) * (random() < 0.1 ? 4 : 1)) * 100) / 100;
    if (speed > 0 || random() < 0.05) metres += 8 + Math.floor(random() * 2);
    const empty = (): boolean => random() < 0.02;
    rows.push({
      time,
      speed: empty() ? null : speed,
      load: empty() ? null : Math.round((650 + (random() - 0.5) * (random() < 0.1 ? 60 : 10)) * 10) / 10,
      pressure: i % 10 === 0 ? Math.round((2.5 + (random() - 0.5) * 0.1) * 100) / 100 : null,
      distance: empty() ? null : metres / 1000,
      state: random() < 0.01 ? 'note' : 'run',
    });
  }
  return rows;
}
