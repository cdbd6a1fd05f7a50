import type { LeftOut } from '../../conformance/status.ts';
import type { Visit } from './replayed.ts';

export interface ReplayCounts {
  readonly drops: number;
  /** Drops that stand in the estimate, and the failures among them. */
  readonly validDrops: number;
  readonly failures: number;
  /** Drops left out of the estimate, without those that came after the end of a rise. */
  readonly excluded: number;
  /** Of these, the ones that the log left out: without a reason, and with one. */
  readonly unexplained: number;
  readonly excused: number;
  /** Specimens in the log, and those with a drop in the estimate. */
  readonly specimens: number;
  readonly usedSpecimens: number;
}

/** Counts drops and specimens; those set aside are no part of a sample. */
export function countDrops(visits: readonly Visit[]): ReplayCounts {
  let drops = 0;
  let validDrops = 0;
  let failures = 0;
  let excluded = 0;
  let unexplained = 0;
  let excused = 0;
  const most = visits.reduce((highest, { tyre }) => Math.max(highest, tyre.index), -1);
  const seen = new Uint8Array(most + 1);
  for (const { drop, use, steers, tyre } of visits) {
    if (use === 'set-aside') continue;
    drops += 1;
    seen[tyre.index]! |= 1;
    if (use === 'used') {
      seen[tyre.index]! |= 2;
      validDrops += 1;
      if (drop.outcome === 'failed') failures += 1;
      // What is ignored after the end of a rise was never part of it; a single look that is ignored is missing.
    } else if (use !== 'ignored' || steers) excluded += 1;
    if (use === 'unexplained') unexplained += 1;
    if (use === 'invalid') excused += 1;
  }
  let specimens = 0;
  let usedSpecimens = 0;
  for (const mark of seen) {
    if (mark > 0) specimens += 1;
    if (mark > 1) usedSpecimens += 1;
  }
  return { drops, validDrops, failures, excluded, unexplained, excused, specimens, usedSpecimens };
}

export function leftOutOf(counts: ReplayCounts): LeftOut {
  return {
    dropsOut: counts.excluded,
    drops: counts.drops,
    specimensOut: counts.specimens - counts.usedSpecimens,
    specimens: counts.specimens,
  };
}
