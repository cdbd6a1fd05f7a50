import type { Drop } from '../logs/drop.ts';
import type { ReplayedSample } from './replay/replay.ts';
import type { ReplayedDrop } from './replay/replayed.ts';

/**
 * What one drop, or one rise, says of a strength: it lies in (lower, upper]. Ends are in the unit of the measure
 * that was asked for; −∞ and ∞ where it is open.
 */
export interface StrengthObservation {
  readonly lower: number;
  readonly upper: number;
  /** Always 1: equal observations are merged where they are fitted. */
  readonly count: number;
  readonly specimen: string;
  /** Drops behind it. */
  readonly drops: number;
  /** These drops themselves: what their conditions are read from. */
  readonly of: readonly Drop[];
  /** Why it is less than its drops seem to say; null as a rule. */
  readonly why: string | null;
}

export interface Observations {
  readonly observations: readonly StrengthObservation[];
  readonly specimens: number;
  readonly drops: number;
  /** Specimens whose rise is not closed on both sides; null for methods that give single looks. */
  readonly censored: number | null;
  /** Most drops on one specimen: more than one are repeat looks at it. */
  readonly mostDrops: number;
}

/** J, mm or whatever a drop's size is told in; null where the drop has none. */
export type Measure = (drop: Drop) => number | null;

/** Which drops stand in: those used, with them the ones that the log left out without a reason, or all it left out. */
export type Variant = 'used' | 'with-unexplained-exclusions' | 'with-exclusions';

/**
 * Turns a replayed log into observations. Up-and-down (and any method of single looks): a failure at x is (−∞, x], a
 * survival (x, ∞). Rising height: one observation a rise, (highest survived, failed]; open above where nothing
 * failed or the failing hit does not count, open below where the first hit failed.
 */
export function observe(
  replay: Pick<ReplayedSample, 'drops' | 'method'>,
  measure: Measure,
  variant: Variant = 'used',
): Observations {
  const chosen = replay.drops.filter((drop) => stands(drop, variant) && measure(drop.drop) !== null);
  const isRising = replay.method === 'rising-height';
  const observations = isRising ? rises(chosen, measure) : chosen.map((drop) => singleLook(drop, measure));
  const { specimens, mostDrops } = hitsOf(chosen);
  return {
    observations,
    specimens,
    drops: chosen.length,
    censored: isRising ? censoredSpecimens(observations) : null,
    mostDrops,
  };
}

/** How many specimens the drops are on, and the most on one of them. */
function hitsOf(chosen: readonly ReplayedDrop[]): { specimens: number; mostDrops: number } {
  const last = chosen.reduce((most, { tyre }) => Math.max(most, tyre.index), -1);
  const hits = new Uint32Array(last + 1);
  for (const { tyre } of chosen) hits[tyre.index]! += 1;
  let specimens = 0;
  let mostDrops = 0;
  for (const count of hits) {
    if (count > 0) specimens += 1;
    if (count > mostDrops) mostDrops = count;
  }
  return { specimens, mostDrops };
}

function stands({ use, drop }: ReplayedDrop, variant: Variant): boolean {
  if (drop.outcome !== 'failed' && drop.outcome !== 'survived') return false;
  if (use === 'used') return true;
  if (use === 'unexplained') return variant !== 'used';
  return use === 'invalid' && variant === 'with-exclusions';
}

function singleLook({ drop }: ReplayedDrop, measure: Measure): StrengthObservation {
  const size = measure(drop)!;
  const failed = drop.outcome === 'failed';
  const [lower, upper] = failed ? [-Infinity, size] : [size, Infinity];
  return { lower, upper, count: 1, specimen: drop.specimen, drops: 1, of: [drop], why: null };
}

function rises(chosen: readonly ReplayedDrop[], measure: Measure): StrengthObservation[] {
  const byRise = new Map<number, ReplayedDrop[]>();
  for (const drop of chosen) {
    const rise = byRise.get(drop.path);
    if (rise === undefined) byRise.set(drop.path, [drop]);
    else rise.push(drop);
  }
  return [...byRise.values()].map((rise) => riseObservation(rise, measure));
}

/**
 * One rise. Where the height was lowered (DROP-03) and the specimen then failed at or below a height that it had
 * survived, hits before have weakened it or hits scatter: it is stronger than the highest height survived below the
 * failure, and nothing closes the interval above.
 */
function riseObservation(rise: readonly ReplayedDrop[], measure: Measure): StrengthObservation {
  const survived = rise.filter(({ drop }) => drop.outcome === 'survived').map(({ drop }) => measure(drop)!);
  const failed = rise.filter(({ drop }) => drop.outcome === 'failed').map(({ drop }) => measure(drop)!);
  const upper = failed.reduce((least, size) => Math.min(least, size), Infinity);
  const lower = survived.reduce((most, size) => Math.max(most, size), -Infinity);
  const { specimen } = rise[0]!.drop;
  const head = { count: 1, specimen, drops: rise.length, of: rise.map(({ drop }) => drop) };
  if (lower < upper) return { ...head, lower, upper, why: null };
  const below = survived
    .filter((size) => size < upper)
    .reduce((most, size) => Math.max(most, size), -Infinity);
  const why = 'failed at or below a height that it had survived: only the survivals below bound its strength';
  return { ...head, lower: below, upper: Infinity, why };
}

function censoredSpecimens(observations: readonly StrengthObservation[]): number {
  const open = observations.filter(({ lower, upper }) => lower === -Infinity || upper === Infinity);
  return new Set(open.map(({ specimen }) => specimen)).size;
}
