import type { DrumOutcome } from '../../logs/outcomes.ts';
import type { Observation } from '../../statistics/likelihood/observation.ts';
import { type Blame, blameOf } from './causes.ts';

/** The life of one tyre in km: it lies in (lower, upper]; equal ends are a failure seen as it happened. */
export interface TyreLife extends Observation {
  readonly specimen: string;
  readonly file: string;
  readonly line: number;
  /** Of its end; null where nobody noted it. */
  readonly cause: string | null;
  readonly blame: Blame;
  /** Whether the tyre itself failed; else it is known only to last beyond `lower`. */
  readonly failed: boolean;
  /** km at which it was last seen whole, every one counted: `lower` before anything was taken from it. */
  readonly seenWhole: number;
}

/** What counts of a distance, where a log of the drum shows that not every kilometre was run at the set condition. */
export interface Deductible {
  /** km of the log that are outside the condition or unverified. */
  readonly notAtCondition: number;
}

/**
 * The life that an outcome tells: a failure in (survived, failed], (0, failed] where it came before the first look; a
 * suspension beyond `survived`, and so is what failed by a part that is not the tyre's (CONTRACT: drum outcomes).
 *
 * @param deductible taken from the lower end, so that it is of kilometres at the condition, while the upper end is of
 *   every kilometre; null where the two do not differ or no log tells
 */
export function lifeOf(outcome: DrumOutcome, deductible: Deductible | null = null): TyreLife {
  const { specimen, file, line, survived, failed, cause } = outcome;
  const blame = blameOf(cause);
  const hasFailed = failed !== null && blame !== 'other';
  const seenWhole = survived ?? 0;
  const lower = Math.max(0, seenWhole - (deductible?.notAtCondition ?? 0));
  const upper = hasFailed ? failed : Number.POSITIVE_INFINITY;
  return { specimen, file, line, cause, blame, failed: hasFailed, seenWhole, lower, upper, count: 1 };
}

/** Whether a life is closed on both sides by what was seen, not by its being positive. */
export function isClosed({ lower, upper }: TyreLife): boolean {
  return lower > 0 && Number.isFinite(upper);
}
