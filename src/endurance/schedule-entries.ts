import type { EnduranceBlock } from '../documents/kinds.ts';
import type { BlockEntry, LedgerEntry } from '../result/endurance.ts';
import type { DrumSummary, Kilometres } from './summary.ts';

/** The blocks as planned, beside what the log says of each. */
export function scheduleEntries(
  schedule: readonly EnduranceBlock[],
  summary: DrumSummary | null,
): readonly BlockEntry[] {
  return schedule.map(({ block, distance, duration }, b) => {
    const run = summary?.schedule[b] ?? null;
    return {
      block,
      planned: { distance, time: duration },
      logged: { distance: run?.distance.logged ?? null, time: run?.loggedTime ?? null },
      distance: ledgerEntry(run?.distance ?? null),
      channels: (run?.channels ?? []).map(({ channel, unit, inTolerance, mean, min, max }) => ({
        channel,
        unit,
        inTolerance,
        mean,
        min,
        max,
      })),
    };
  });
}

/** Kilometres of a ledger; null without a log. */
export function ledgerEntry(distance: Kilometres | null): LedgerEntry {
  if (distance === null) return { logged: null, atCondition: null, excluded: null, unverified: null };
  const { logged, atCondition, excluded, unverified } = distance;
  return { logged, atCondition, excluded, unverified };
}
