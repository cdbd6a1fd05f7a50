import { instantOf } from './instant.ts';

/** A moment as far as it was written down: milliseconds since 1970 UTC, ends included. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

const DAY = 86_400_000;
const DATE = /^\d{4}-\d\d-\d\d$/;

/**
 * The moment that an ISO 8601 text names: an instant with its offset, or a whole day. A day, and a time without an
 * offset, are those of the place whose offset is given (that of the test's own times). Null for any other text.
 *
 * @param offset of the place, such as `+01:00` or `Z`
 */
export function spanOf(text: string, offset: string): Span | null {
  const written = text.trim();
  const instant = instantOf(written) ?? instantOf(`${written}${offset}`);
  if (instant !== null) return { from: instant, to: instant };
  if (!DATE.test(written)) return null;
  const start = instantOf(`${written}T00:00${offset}`);
  return start === null ? null : { from: start, to: start + DAY - 1 };
}

/** The offset behind an ISO 8601 time, such as `+01:00`; `Z` where it has none. */
export function offsetOf(time: string): string {
  return /(?:Z|[+-]\d\d(?::?\d\d)?)$/.exec(time)?.[0] ?? 'Z';
}

/** The calendar day of an ISO 8601 time, at the place where it was written: `2026-03-09`. */
export function dayOf(time: string): string {
  return time.slice(0, 10);
}
