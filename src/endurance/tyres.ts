import type { ListedDeviation } from '../conformance/deviation.ts';
import type { EnduranceBlock } from '../documents/kinds.ts';
import type { TyreEntry } from '../result/endurance.ts';
import { ledgerEntry, scheduleEntries } from './schedule-entries.ts';
import type { TyreOnDrum } from './stints.ts';
import type { DrumSummary } from './summary.ts';

/** What the columns of one tyre say, where each position of a drum has its own. */
export interface TyreRun {
  readonly tyre: TyreOnDrum | null;
  readonly summary: DrumSummary;
  readonly deviations: readonly ListedDeviation[];
}

/**
 * The departures that the columns of all tyres show. What concerns the drum shows in each of them and is told once; what
 * only one tyre's columns show is told of that tyre.
 */
export function deviationsOfRuns(runs: readonly TyreRun[]): readonly ListedDeviation[] {
  if (runs.length < 2) return runs.flatMap(({ deviations }) => deviations);
  const keyOf = ({ code, line, message }: ListedDeviation) => `${code} ${line} ${message}`;
  const counts = new Map<string, number>();
  for (const key of runs.flatMap(({ deviations }) => deviations.map(keyOf))) {
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  const told = new Set<string>();
  return runs.flatMap(({ tyre, deviations }) =>
    deviations.flatMap((deviation) => {
      const key = keyOf(deviation);
      if ((counts.get(key) ?? 0) > 1) {
        if (told.has(key)) return [];
        told.add(key);
        return [deviation];
      }
      return [{ ...deviation, specimen: tyre?.specimen ?? null }];
    }),
  );
}

/** The ledger of each tyre, and where it stood from when to when. */
export function tyreEntries(
  runs: readonly TyreRun[],
  schedule: readonly EnduranceBlock[],
): readonly TyreEntry[] {
  return runs.map(({ tyre, summary }) => ({
    specimen: tyre?.specimen ?? null,
    stints: (tyre?.stints ?? []).map(({ position, from, to }) => ({
      position,
      from: isoOf(from),
      to: isoOf(to),
    })),
    distance: ledgerEntry(summary.distance),
    schedule: scheduleEntries(schedule, summary),
  }));
}

function isoOf(time: number): string | null {
  return Number.isFinite(time) ? new Date(time).toISOString() : null;
}
