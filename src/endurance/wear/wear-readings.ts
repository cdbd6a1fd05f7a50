import type { ListedDeviation } from '../../conformance/deviation.ts';
import { DeviationList } from '../../conformance/deviation-list.ts';
import type { Inspection } from '../../logs/inspections.ts';
import { quote } from '../../problem/echo.ts';
import type { DepthReading } from '../../statistics/wear/limit-crossing.ts';

/** Mean tread depths of one tyre by distance, in order. */
export interface TyreWear {
  readonly specimen: string;
  readonly readings: readonly DepthReading[];
}

/** mm; a depth that grows by more is no scatter of the gauge (common practice, no source). */
const GAUGE_SCATTER = 0.1;

/**
 * The readings that wear lines are drawn through: of each tyre the mean depth over its points at each distance. Readings
 * taken hot are left out.
 */
export function wearOf(inspections: readonly Inspection[]): readonly TyreWear[] {
  return [...grouped(inspections.filter(isUsed), ({ specimen }) => specimen)].map(([specimen, own]) => ({
    specimen,
    readings: [...grouped(own, ({ distance }) => distance)]
      .map(([distance, rows]) => ({ distance, depth: meanDepth(rows) }))
      .sort((a, b) => a.distance - b.distance),
  }));
}

/** Departures that the readings show: hot ones, other points than at the first look, depths that grow. */
export function wearDeviations(inspections: readonly Inspection[]): readonly ListedDeviation[] {
  const list = new DeviationList();
  for (const { file, line, specimen, state, treadDepth } of inspections) {
    if (state === 'hot' && treadDepth !== null) {
      list.add({
        code: 'DRUM-24',
        found: () => `tread depth ${treadDepth} mm read on a hot tyre`,
        file,
        line,
        specimen,
      });
    }
  }
  for (const [specimen, own] of grouped(inspections.filter(isUsed), (row) => row.specimen)) {
    const looks = [...grouped(own, ({ distance }) => distance)].sort(([a], [b]) => a - b);
    looks.slice(1).forEach(([distance, rows], i) => {
      const [, before] = looks[i]!;
      const place = { file: rows[0]!.file, line: rows[0]!.line, specimen };
      const now = pointsOf(rows);
      const first = pointsOf(looks[0]![1]);
      if (now !== first) {
        list.add({
          code: 'DRUM-25',
          found: () => `at ${distance} km read at ${quote(now)}, first at ${quote(first)}`,
          ...place,
        });
      }
      const gain = meanDepth(rows) - meanDepth(before);
      if (gain > GAUGE_SCATTER) {
        list.add({
          code: 'DRUM-40',
          found: () => `at ${distance} km the tread is ${gain.toFixed(2)} mm deeper than before`,
          ...place,
        });
      }
    });
  }
  return list.listed();
}

function isUsed({ treadDepth, state }: Inspection): boolean {
  return treadDepth !== null && state !== 'hot';
}

function pointsOf(rows: readonly Inspection[]): string {
  return rows
    .map(({ point, zone }) => point ?? zone ?? '')
    .sort()
    .join(' ');
}

function meanDepth(rows: readonly Inspection[]): number {
  return rows.reduce((sum, { treadDepth }) => sum + treadDepth!, 0) / rows.length;
}

function grouped<Key>(rows: readonly Inspection[], keyOf: (row: Inspection) => Key): Map<Key, Inspection[]> {
  const groups = new Map<Key, Inspection[]>();
  for (const row of rows) {
    const same = groups.get(keyOf(row));
    if (same) same.push(row);
    else groups.set(keyOf(row), [row]);
  }
  return groups;
}
