import { InputError } from '../../problem/problem.ts';
import { LEAST_BASE } from '../../statistics/control-chart/limits.ts';
import type { Occasion } from './occasions.ts';

/** Which points limits are to come from: the first so many, or those of some days (ms since 1970, ends included). */
export type BaseChoice =
  | { readonly kind: 'first'; readonly count: number }
  | { readonly kind: 'days'; readonly from: number; readonly to: number; readonly text: string };

/** Points that limits come from where nobody says: more would hide an early drift, fewer make loose limits. */
const USUAL = 20;

/**
 * The base period: as asked; else the first 20 points, of a record shorter than 30 the first two thirds, never fewer than 10.
 *
 * @returns the places of its points, and how it was chosen
 * @throws InputError for fewer than 10 points
 */
export function basePeriod(
  occasions: readonly Occasion[],
  choice: BaseChoice | null,
): { readonly places: readonly number[]; readonly chosen: string } {
  const places = occasions.flatMap(({ instant }, i) =>
    isIn(i, instant, occasions.length, choice) ? [i] : [],
  );
  if (places.length < LEAST_BASE) {
    const { file, line } = occasions.at(-1)!;
    const message = `found ${places.length} point(s) in the base period, expected at least ${LEAST_BASE}: limits from fewer mean nothing; measure the check standard on more occasions, or name a longer period with --base`;
    throw new InputError([{ file, line, column: null, code: 'base-too-short', message }]);
  }
  const chosen =
    choice === null
      ? `the first ${places.length} points, since none was named (--base)`
      : choice.kind === 'first'
        ? `the first ${choice.count} points, as asked`
        : `the points of ${choice.text}, as asked`;
  return { places, chosen };
}

function isIn(place: number, instant: number, points: number, choice: BaseChoice | null): boolean {
  if (choice?.kind === 'days') return instant >= choice.from && instant <= choice.to;
  const count = choice?.count ?? Math.min(USUAL, Math.max(LEAST_BASE, Math.floor((2 * points) / 3)));
  return place < count;
}
