import { beginOfDay } from '../quantity/calendar.ts';
import { UsageError } from './failure.ts';
import type { Shell } from './shell.ts';

/**
 * The one date that matters, as milliseconds since 1970 of the end of that day in UTC: `--as-of DATE`, else
 * SOURCE_DATE_EPOCH, else today (CONTRACT: streams).
 *
 * @param now a clock in ms since 1970
 * @throws UsageError for a date that is none
 */
export function asOf(
  written: string | undefined,
  shell: Pick<Shell, 'env'>,
  now: () => number,
): { date: string; until: number } {
  const epoch = shell.env.SOURCE_DATE_EPOCH;
  if (written === undefined && epoch !== undefined && !/^\d{1,11}$/u.test(epoch)) {
    throw new UsageError('SOURCE_DATE_EPOCH is no whole number of seconds; correct it, or give --as-of DATE');
  }
  const date =
    written ?? new Date(epoch === undefined ? now() : Number(epoch) * 1000).toISOString().slice(0, 10);
  const begin = beginOfDay(date);
  if (begin === null) {
    throw new UsageError(`found --as-of "${date.slice(0, 40)}", expected a date such as 2026-03-16`);
  }
  return { date, until: begin + 86_400_000 };
}
