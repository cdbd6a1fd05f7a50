import type { ImpactProtocol } from '../../documents/kinds.ts';
import type { Levels } from '../rules/levels.ts';
import { hitsAllowed } from '../rules/method-rules.ts';

/** How many valid drops a series may still take at most, or why nobody can say. */
export type Remaining =
  | { readonly drops: number; readonly why: null }
  | { readonly drops: null; readonly why: string };

/** What a series has had so far. */
export interface Had {
  readonly drops: number;
  readonly specimens: number;
  /** Drops that the specimen under test can still take at most; nought where it is used up. */
  readonly onLast: number;
}

/**
 * The most valid drops that a stop rule still allows: the first count reached ends a series, so the least of what each
 * of them allows.
 *
 * @param levels of a rising-height protocol, whose rises take at most one drop a level
 */
export function remainingDrops(protocol: ImpactProtocol, levels: Levels | null, had: Had): Remaining {
  const { stop, method, levels: fixed, perLevel } = protocol;
  const most: number[] = [];
  if (stop?.atMost !== undefined) most.push(stop.atMost);
  else if (stop?.drops !== undefined && stop.rarer === undefined) most.push(stop.drops);
  if (method === 'fixed-level' && fixed !== null && perLevel !== null) most.push(fixed.length * perLevel);
  const counts = most.map((count) => count - had.drops);
  if (stop?.specimens !== undefined) {
    const each = method === 'rising-height' && levels !== null ? rise(levels) : hitsAllowed(protocol);
    counts.push(Math.max(0, stop.specimens - had.specimens) * each + had.onLast);
  }
  const least = Math.min(...counts);
  if (Number.isFinite(least)) return { drops: Math.max(0, least), why: null };
  if (stop === null) return { drops: null, why: 'the protocol has no stop rule' };
  if (stop.rarer !== undefined) {
    return {
      drops: null,
      why: `it goes on until the rarer outcome was seen ${stop.rarer} times, without an atMost`,
    };
  }
  if (stop.reversals !== undefined) return { drops: null, why: 'it ends with a number of reversals' };
  return { drops: null, why: 'nothing limits the drops on one specimen' };
}

/** Drops of one rise at most: from the start to the highest level. */
export function rise(levels: Levels): number {
  return levels.highest - levels.within(0) + 1;
}
