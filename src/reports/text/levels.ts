import type { ImpactResult } from '../../result/analysis.ts';

export type PathDrop = ImpactResult['path'][number];

/** Drops at one height, or, where a log has more heights than a page has rows, between two. */
export interface Level {
  /** The height in mm, or the mass in kg, met most often. */
  readonly height: number;
  /** mm or kg; differs from the height for a stretch of heights only. */
  readonly from: number;
  readonly to: number;
  readonly isMass: boolean;
  /** J, mean over the drops; null where it is not known of all. */
  readonly energy: number | null;
  readonly failed: number;
  readonly survived: number;
  readonly leftOut: number;
}

/** What a mark says of a drop: its outcome where it counts, else that it was left out. */
export type Standing = 'failed' | 'survived' | 'leftOut';

export function standingOf(drop: PathDrop): Standing {
  if (!drop.used) return 'leftOut';
  return drop.outcome === 'failed' || drop.outcome === 'survived' ? drop.outcome : 'leftOut';
}

/** Heights within 2 mm are one level: twice the tolerance that a height has where nothing else is said. */
const SAME = 2;
/** kg within which masses are one level. */
const SAME_MASS = 0.05;

/**
 * The levels of a series from the top down, and for each drop the index of its level. More than `most` distinct
 * levels are put together into stretches of equal width.
 */
export function levelsOf(
  drops: readonly PathDrop[],
  most: number,
): { readonly levels: readonly Level[]; readonly at: readonly number[] } {
  const same = sameWithin(drops.some(isByMass));
  const placed = drops.map((drop) => ({ drop, place: isByMass(drop) ? (drop.mass ?? 0) : drop.height }));
  const starts = startsOf(
    placed.map(({ place }) => place),
    most,
    same,
  );
  const at = placed.map(({ place: height }) => {
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (starts[middle]! <= height) low = middle;
      else high = middle - 1;
    }
    return starts.length - 1 - low;
  });
  const members: Placed[][] = starts.map(() => []);
  for (const [i, drop] of placed.entries()) members[at[i]!]!.push(drop);
  const filled = members.map((group) => group.length > 0);
  const rank = filled.map((_, i) => filled.slice(0, i).filter(Boolean).length);
  return { levels: members.filter((group) => group.length > 0).map(levelOf), at: at.map((i) => rank[i]!) };
}

interface Placed {
  readonly drop: PathDrop;
  readonly place: number;
}

/** Whether levels are masses: a path states them only then. */
function isByMass({ mass }: PathDrop): boolean {
  return mass !== undefined;
}

function sameWithin(isMass: boolean): number {
  return isMass ? SAME_MASS : SAME;
}

/** The lowest height of each level, rising. */
function startsOf(places: readonly number[], most: number, same: number): number[] {
  const heights = [...new Set(places)].sort((a, b) => a - b);
  const starts: number[] = [];
  for (const height of heights) {
    if (starts.length === 0 || height - starts.at(-1)! > same) starts.push(height);
  }
  if (starts.length <= most) return starts;
  const lowest = heights[0]!;
  const width = (heights.at(-1)! - lowest) / most;
  return Array.from({ length: most }, (_, i) => lowest + i * width);
}

function levelOf(drops: readonly Placed[]): Level {
  const times = new Map<number, number>();
  let from = Infinity;
  let to = -Infinity;
  let joules: number | null = 0;
  const counts = { failed: 0, survived: 0, leftOut: 0 };
  for (const { drop, place } of drops) {
    times.set(place, (times.get(place) ?? 0) + 1);
    from = Math.min(from, place);
    to = Math.max(to, place);
    joules = joules === null || drop.energy === null ? null : joules + drop.energy;
    counts[standingOf(drop)] += 1;
  }
  const [height] = [...times].reduce((best, next) => (next[1] > best[1] ? next : best));
  const isMass = drops.some(({ drop }) => isByMass(drop));
  return { height, from, to, isMass, energy: joules === null ? null : joules / drops.length, ...counts };
}

/** Whether a level is a stretch of heights rather than one height with its scatter. */
export function isStretch(level: Level): boolean {
  return level.to - level.from > sameWithin(level.isMass);
}
