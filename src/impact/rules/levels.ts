import type { Step } from '../../documents/kinds.ts';
import { height, kilograms } from '../../quantity/format.ts';

/** What moves from level to level: the height, or at one height the falling mass. */
export type Varied = 'height' | 'mass';

/** mm (kg where the mass is varied); null is open. */
export interface HeightLimits {
  readonly min: number | null;
  readonly max: number | null;
}

/** The heights (or falling masses) that a method moves on, by their index from the start. */
export interface Levels {
  readonly step: Step;
  /** Lowest and highest index within the limits; the highest is Infinity where nothing bounds it. */
  readonly lowest: number;
  readonly highest: number;
  /** Height in mm, or mass in kg, of a level, beyond the limits too: a log may have gone there. */
  at(index: number): number;
  /** The index itself, or that of the level at the limit where it lies beyond: where a rule may go. */
  within(index: number): number;
  /** Index of the level nearest to a height, beyond the limits too; halfway between two, the lower one. */
  nearest(height: number): number;
  /** What its levels are called: heights or masses. */
  readonly noun: 'heights' | 'masses';
  /** A level for people, with its unit. */
  say(level: number): string;
}

/** Rounding of decimal heights must not cost a level that stands exactly on a limit. */
const SLACK = 1e-9;

/**
 * Levels from a start: additive, level k = start + k·step; ratio, level k = start·(1 + r)^k. Heights are rounded
 * only to a resolution that the rig states. No level lies at or below nought.
 *
 * @param limits the narrower of the protocol's and the rig's.
 * @param resolution mm, or null for none.
 * @param varied what the levels are: heights in mm, or masses in kg.
 * @throws RangeError for a start or step that is not above nought; documents are checked before.
 */
export function levelsFrom(
  start: number,
  step: Step,
  limits: HeightLimits = { min: null, max: null },
  resolution: number | null = null,
  varied: Varied = 'height',
): Levels {
  const size = step.kind === 'additive' ? step.size : step.ratio;
  if (!(start > 0) || !(size > 0)) {
    throw new RangeError(`levels need a start and a step above nought, not ${start} and ${size}`);
  }
  const exact = (index: number) =>
    step.kind === 'additive' ? start + index * size : start * (1 + size) ** index;
  const place = (height: number) =>
    step.kind === 'additive' ? (height - start) / size : Math.log(height / start) / Math.log1p(size);
  const floor = step.kind === 'additive' ? Math.floor(place(0) + SLACK) + 1 : -Infinity;
  const lowest =
    limits.min === null || limits.min <= 0 ? floor : Math.max(floor, Math.ceil(place(limits.min) - SLACK));
  const highest = limits.max === null ? Infinity : Math.max(lowest, Math.floor(place(limits.max) + SLACK));
  const at = (index: number) => rounded(exact(index), resolution);
  return {
    step,
    lowest,
    highest,
    at,
    noun: varied === 'height' ? 'heights' : 'masses',
    say: sayer(varied),
    within: (index) => Math.min(highest, Math.max(lowest, index)),
    nearest(height) {
      const below = Math.floor(place(height) + SLACK);
      return height - at(below) <= at(below + 1) - height ? below : below + 1;
    },
  };
}

/** How a level of what is varied is written for people. */
export function sayer(varied: Varied): (level: number) => string {
  return varied === 'height' ? height : kilograms;
}

/** The narrower of two pairs of limits. */
export function narrower(one: HeightLimits, other: HeightLimits): HeightLimits {
  return { min: extreme(Math.max, one.min, other.min), max: extreme(Math.min, one.max, other.max) };
}

function extreme(pick: (...values: number[]) => number, a: number | null, b: number | null): number | null {
  if (a === null || b === null) return a ?? b;
  return pick(a, b);
}

function rounded(height: number, resolution: number | null): number {
  return resolution === null
    ? height
    : Number((Math.round(height / resolution) * resolution).toPrecision(12));
}
