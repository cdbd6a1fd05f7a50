/** Midnight in UTC at the beginning of a day, in ms since 1970; null for what is no day of the calendar. */
export function beginOfDay(text: string): number | null {
  const begin = /^\d{4}-\d\d-\d\d$/u.test(text) ? Date.parse(`${text}T00:00:00Z`) : Number.NaN;
  // A 30th of February would else be read as a day in March.
  return !Number.isNaN(begin) && new Date(begin).toISOString().slice(0, 10) === text ? begin : null;
}
