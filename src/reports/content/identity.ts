import type { ReportedRun } from '../../result/report.ts';
import { named, versioned } from '../text/page.ts';
import type { Language } from '../words/language.ts';

/** What a report is called where it must be told from others: its number, else its runs. */
export function reportName(tests: readonly ReportedRun[]): string {
  const number = tests.find(({ request }) => request.report !== null)?.request.report;
  if (number) return named(number);
  return tests
    .slice(0, 3)
    .map(({ result }) => named(result.run ?? result.protocol.id))
    .join(', ');
}

/** The days of the test, as the run states them, else as the log has them. */
export function testedOn({ request, days }: ReportedRun): string | null {
  if (request.tested !== null) return request.tested;
  if (days === null) return null;
  return days.first === days.last ? days.first : `${days.first} – ${days.last}`;
}

/** Run, protocol, rig and days in one line. */
export function subtitleOf(tests: readonly ReportedRun[], language: Language): string {
  const { items } = language.words;
  const parts = tests.slice(0, 3).map((test) => {
    const { run, protocol, rig } = test.result;
    return [
      run === null ? null : `${items.run} ${named(run)}`,
      versioned(protocol.id, protocol.version),
      rig === null ? null : versioned(rig.id, rig.config),
      testedOn(test),
    ]
      .filter((part) => part !== null)
      .join(' · ');
  });
  const rest = tests.length - parts.length;
  return parts.join(' | ') + (rest > 0 ? ` | +${rest}` : '');
}
