import { quote } from '../problem/echo.ts';
import { type Field, reading, wrong } from './fields.ts';

/** Midnight in UTC at the beginning of a day, in ms since 1970; null for what is no day of the calendar. */
export function beginOfDay(text: string): number | null {
  const begin = /^\d{4}-\d\d-\d\d$/u.test(text) ? Date.parse(`${text}T00:00:00Z`) : Number.NaN;
  // A 30th of February would else be read as a day in March.
  return !Number.isNaN(begin) && new Date(begin).toISOString().slice(0, 10) === text ? begin : null;
}

/** A day of the calendar, as ISO 8601 writes it. */
export function date(description: string): Field<string> {
  const expected = 'a day of the calendar such as 2026-03-16';
  return reading(
    description,
    expected,
    () => ({ type: 'string', pattern: '^\\d{4}-\\d\\d-\\d\\d$' }),
    (text) =>
      beginOfDay(text) === null
        ? wrong(`found ${quote(text)}, expected ${expected}`)
        : { ok: true, value: text },
  );
}
