import { quote } from '../problem/echo.ts';
import { beginOfDay } from '../quantity/calendar.ts';
import { type Field, reading, wrong } from './fields.ts';

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
