import type { Estimate } from './estimate.ts';

/** What to do next at the rig (`tirelab.next/1`). */
export interface NextResult {
  readonly protocol: { readonly id: string; readonly version: string; readonly method: string };
  /** Null where no advice may be given; `why` then says from where to repeat. */
  readonly decision: 'height' | 'stop' | null;
  /** mm; for a protocol that varies the mass its one height. */
  readonly height: number | null;
  /** kg; null where it is not stated. */
  readonly mass: number | null;
  /** J of the next drop, and m/s of a free fall from its height. */
  readonly energy: number | null;
  readonly impactSpeed: number | null;
  /** `any`: a new specimen, or a free site of the last one. */
  readonly specimen: 'new' | 'same' | 'any' | null;
  readonly why: string;
  /** Valid drops that are still to be made at most; null where the stop rule sets no limit. */
  readonly remaining: number | null;
  /** Why there is no limit; null where there is one. */
  readonly remainingWhy: string | null;
  readonly made: { readonly drops: number; readonly failures: number; readonly specimens: number };
  /** The median as known so far; null before the first drop. */
  readonly estimate: Estimate | null;
  /** What a crash of the rig's computer has left; null where nothing is missing. */
  readonly recovery: Recovery | null;
  /** What a person should know before the next drop: sentences. */
  readonly notes: readonly string[];
}

export interface Recovery {
  /** Sentences: what was lost, and where. */
  readonly lost: readonly string[];
  /** Drops that can still be used. */
  readonly usable: number;
  /** Specimens that may have had a hit nobody knows of, and so are known only as far as their last row. */
  readonly censored: readonly string[];
  readonly advice: string;
}
