import type { Criterion } from '../documents/kinds.ts';
import { plain, written } from '../quantity/amount.ts';

/** A limit as a range of acceptance; null where that side is open. */
export interface Acceptance {
  readonly lower: number | null;
  readonly upper: number | null;
}

/** The range that a criterion's limit accepts: `atLeast` closes the lower side, `atMost` the upper, `within` both. */
export function acceptanceOf(limit: Criterion['limit']): Acceptance {
  return {
    lower: limit.atLeast ?? limit.within?.lower ?? null,
    upper: limit.atMost ?? limit.within?.upper ?? null,
  };
}

/** The range moved inwards by a guard band; its ends may cross where the band is wider than the range. */
export function guarded(range: Acceptance, width: number): Acceptance {
  return {
    lower: range.lower === null ? null : range.lower + width,
    upper: range.upper === null ? null : range.upper - width,
  };
}

/**
 * Whether a value is at or above a limit, at full precision. A few units in the last place are forgiven, so that what
 * is equal on paper stays equal in binary: 0.1 + 0.2 reaches 0.3, and 855 g reaches 900 g − 5 %.
 */
export function reaches(value: number, limit: number): boolean {
  return value >= limit || limit - value <= 8 * Number.EPSILON * Math.max(Math.abs(value), Math.abs(limit));
}

/** Whether a value lies in the range, ends included. */
export function accepts(range: Acceptance, value: number): boolean {
  const highEnough = range.lower === null || reaches(value, range.lower);
  return highEnough && (range.upper === null || reaches(range.upper, value));
}

/** `at least 45 J`, `at most 0.1 bar`, `855 to 945 g`. */
export function limitInWords(range: Acceptance, unit: string): string {
  const { lower, upper } = range;
  if (lower !== null && upper !== null) return `${plain(lower)} to ${written(upper, unit)}`;
  if (lower !== null) return `at least ${written(lower, unit)}`;
  return upper === null ? 'any value' : `at most ${written(upper, unit)}`;
}
