import type { Stop } from '../../documents/kinds.ts';
import { counted } from '../../quantity/format.ts';
import type { Trial } from './rule.ts';

/** What a stop rule counts: valid drops only. */
export interface Progress {
  readonly drops: number;
  readonly failures: number;
  /** Changes of outcome between neighbouring valid drops. */
  readonly reversals: number;
  /** Specimens begun, and those of them that may still be hit. */
  readonly specimens: number;
  readonly open: number;
}

export const NO_PROGRESS: Progress = { drops: 0, failures: 0, reversals: 0, specimens: 0, open: 0 };

/**
 * Counts one more valid drop.
 *
 * @param before outcome of the valid drop before it in the series.
 * @param isOver whether its specimen may not be hit again.
 */
export function counting(progress: Progress, trial: Trial, before: string | null, isOver: boolean): Progress {
  const begun = trial.hit === 1 ? 1 : 0;
  return {
    drops: progress.drops + 1,
    failures: progress.failures + (trial.outcome === 'failed' ? 1 : 0),
    reversals: progress.reversals + (before !== null && before !== trial.outcome ? 1 : 0),
    specimens: progress.specimens + begun,
    open: Math.max(0, progress.open + begun - (isOver ? 1 : 0)),
  };
}

/**
 * Why the series ends here, or null where it goes on. Where a stop rule names several counts, the first one
 * reached ends the series, except that `rarer` prolongs `drops` up to `atMost`.
 */
export function stopReached(stop: Stop | null, progress: Progress): string | null {
  if (stop === null) return null;
  const { drops, reversals, specimens } = progress;
  const rarer = Math.min(progress.failures, drops - progress.failures);
  if (stop.atMost !== undefined && drops >= stop.atMost) {
    return `${counted(drops, 'valid drop')} made, the most that the stop rule allows`;
  }
  if (stop.drops !== undefined && drops >= stop.drops && (stop.rarer === undefined || rarer >= stop.rarer)) {
    const seen = stop.rarer === undefined ? '' : `, the rarer outcome seen ${rarer} times`;
    return `${drops} of ${counted(stop.drops, 'valid drop')} made${seen}`;
  }
  if (stop.reversals !== undefined && reversals >= stop.reversals) {
    return `${reversals} of ${counted(stop.reversals, 'reversal')} seen`;
  }
  if (stop.specimens !== undefined && specimens >= stop.specimens && progress.open === 0) {
    return `${specimens} of ${counted(stop.specimens, 'specimen')} tested`;
  }
  return null;
}

/** What a series that has not reached its stop still lacks, such as `22 of 30 valid drops`. */
export function stillLacking(stop: Stop, progress: Progress): string {
  const { drops, reversals, specimens, open } = progress;
  const rarer = Math.min(progress.failures, drops - progress.failures);
  const parts: string[] = [];
  if (stop.drops !== undefined && drops < stop.drops) {
    parts.push(`${drops} of ${counted(stop.drops, 'valid drop')}`);
  } else if (stop.rarer !== undefined && rarer < stop.rarer) {
    parts.push(`the rarer outcome ${rarer} of ${stop.rarer} times`);
  }
  if (stop.reversals !== undefined) parts.push(`${reversals} of ${counted(stop.reversals, 'reversal')}`);
  if (stop.specimens !== undefined) {
    const unfinished = specimens >= stop.specimens && open > 0 ? ', the last of them unfinished' : '';
    parts.push(`${specimens} of ${counted(stop.specimens, 'specimen')}${unfinished}`);
  }
  if (parts.length === 0) parts.push(`${drops} of ${counted(stop.atMost ?? 0, 'valid drop')}`);
  return parts.join(' and ');
}
