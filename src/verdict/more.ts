import type { Criterion } from '../documents/kinds.ts';
import { normal } from '../statistics/laws/normal.ts';
import type { Evidence } from './evidence.ts';
import { acceptanceOf } from './limit.ts';

/** About how many more specimens would decide; null where that cannot be said, or is more than `MOST`. */
export interface MoreSpecimens {
  readonly specimens: number | null;
  readonly why: string;
}

/** Beyond this many the number says only that the estimate is too near the limit. */
export const MOST = 500;

/**
 * About how many more specimens of the same method would decide an inconclusive criterion under the rule
 * `lower-bound`, if the estimate stays where it is: a bound w away from the estimate of n specimens is
 * w·√(n/N) away with N of them, so the limit at distance δ is reached with N = n·(w/δ)². Since the estimate will
 * move, the number is one of even odds, not a promise. Common practice, no source.
 *
 * @param evidence the numbers of the criterion, its bounds one-sided at the criterion's confidence.
 */
export function moreSpecimens(criterion: Criterion, evidence: Evidence): MoreSpecimens {
  const { specimens: n, estimate } = evidence;
  const short = Math.max(0, (criterion.minSpecimens ?? 0) - n);
  if (estimate === null || n === 0) {
    return {
      specimens: null,
      why: `without an estimate nobody can say how many more tyres would decide${short > 0 ? `; at least ${short} for the number asked for` : ''}`,
    };
  }
  const needed = neededSpecimens(criterion, evidence, estimate);
  if (needed === null) {
    return {
      specimens: null,
      why: 'without a standard error nobody can say how many more tyres would decide',
    };
  }
  const more = Math.max(Math.ceil(needed - n - 1e-9), short, 1);
  if (more > MOST) {
    return {
      specimens: null,
      why: `more than ${MOST} more tyres would be needed: the estimate is too near the limit`,
    };
  }
  const rounded = short === more ? more : roundUp(more);
  const which = short === more ? `${rounded}` : `about ${rounded}`;
  return {
    specimens: rounded,
    why: `${which} more ${rounded === 1 ? 'tyre' : 'tyres'} would decide if the estimate stays where it is`,
  };
}

/** n·(w/δ)² of the side that needs most; 0 where nothing but the number of specimens is wanting. */
function neededSpecimens(criterion: Criterion, evidence: Evidence, estimate: number): number | null {
  const range = acceptanceOf(criterion.limit);
  const below = widthBelow(criterion, evidence, estimate);
  const above = widthAbove(criterion, evidence, estimate);
  const needs: (number | null)[] = [];
  const need = (width: number | null, distance: number) => {
    needs.push(width === null ? null : width === 0 ? 0 : evidence.specimens * (width / distance) ** 2);
  };
  if (range.lower !== null && estimate < range.lower) need(above, range.lower - estimate);
  else if (range.upper !== null && estimate > range.upper) need(below, estimate - range.upper);
  else {
    if (range.lower !== null) need(below, estimate - range.lower);
    if (range.upper !== null) need(above, range.upper - estimate);
  }
  return needs.some((n) => n === null) ? null : Math.max(...(needs as number[]));
}

function widthBelow(criterion: Criterion, { lower, standardError }: Evidence, estimate: number) {
  return lower === null ? byError(criterion, standardError) : Math.max(0, estimate - lower);
}

function widthAbove(criterion: Criterion, { upper, standardError }: Evidence, estimate: number) {
  return upper === null ? byError(criterion, standardError) : Math.max(0, upper - estimate);
}

function byError(criterion: Criterion, standardError: number | null): number | null {
  return standardError === null ? null : normal.quantile(criterion.confidence) * standardError;
}

/** Two digits say all that such a number knows: 137 becomes 140. */
function roundUp(count: number): number {
  const step = count < 100 ? 1 : 10;
  return Math.ceil(count / step) * step;
}
