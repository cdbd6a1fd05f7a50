import { findRoot } from '../root.ts';

/** Largest error of a root, in the last step outward: more digits than any data have, an evaluation sooner. */
const FINE = 1e-12;

/**
 * The first sign change of f when going outward from a point where f ≤ 0, by steps that double; null if f stays at or
 * below 0 as far as numbers go. Where f jumps, the jump is found.
 *
 * @param step first step; its sign is the direction
 */
export function findOutward(f: (x: number) => number, from: number, step: number): number | null {
  let inside = from;
  let below: number | null = null;
  for (let width = step; Number.isFinite(from + width); width *= 2) {
    const outside = from + width;
    const above = f(outside);
    if (above > 0) {
      const tolerance = FINE * Math.abs(width);
      return findRoot(f, inside, outside, { tolerance, ends: [below ?? f(inside), above] });
    }
    inside = outside;
    below = above;
  }
  return null;
}

/**
 * The first point among from + step·2ᵏ, k = 0, 1, 2 …, where f ≤ 0 holds; null if none. With `shrink` k runs downward:
 * towards `from`.
 */
export function findInside(
  f: (x: number) => number,
  from: number,
  step: number,
  shrink = false,
): number | null {
  const ratio = shrink ? 0.5 : 2;
  for (let k = 0, width = step; k < 200 && Number.isFinite(from + width); k++, width *= ratio) {
    if (f(from + width) <= 0) return from + width;
  }
  return null;
}
