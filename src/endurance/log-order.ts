import type { EnduranceBlock } from '../documents/kinds.ts';
import type { SampleLog } from '../logs/samples/head.ts';
import type { SampleLayout } from '../logs/samples/layout.ts';
import { InputError, type Problem } from '../problem/problem.ts';
import type { Frame } from './frame.ts';
import { PartFolder } from './part-fold.ts';
import { planFold } from './plan.ts';
import type { LogRules } from './rules.ts';

/** The first rows of a log, each a frame; enough to tell its first time and how often it was sampled. */
function firstRows(log: SampleLog, schedule: readonly EnduranceBlock[], rules: LogRules): Frame[] {
  const plan = planFold(log.layout, schedule, rules, 1000);
  const { bodyOffset } = log.layout;
  const part = {
    path: log.path,
    from: bodyOffset,
    to: Math.min(log.size, bodyOffset + 64 * 1024),
    size: log.size,
  };
  return new PartFolder().rows({ part, layout: log.layout, plan }).slice(0, 1000);
}

/** Milliseconds from row to row, as a log itself keeps them. */
export function medianInterval(log: SampleLog, schedule: readonly EnduranceBlock[], rules: LogRules): number {
  const times = firstRows(log, schedule, rules).map((row) => row.first.time);
  const steps = times
    .slice(1)
    .map((time, i) => time - times[i]!)
    .filter((step) => step > 0);
  steps.sort((a, b) => a - b);
  return steps[Math.floor(steps.length / 2)] ?? 1000;
}

/**
 * Logs by their first time, where they have the time of a clock; all must have the same columns and units.
 *
 * @param isOrdered whether they stand as they are to be read
 */
export function inOrder(
  logs: readonly SampleLog[],
  schedule: readonly EnduranceBlock[],
  rules: LogRules,
  isOrdered = false,
): SampleLog[] {
  const first = logs[0]!;
  const problems = logs
    .filter((log) => columnsOf(log.layout) !== columnsOf(first.layout))
    .map((log): Problem => {
      const message =
        `found the columns ${columnsOf(log.layout)}, expected ${columnsOf(first.layout)} as in ${first.path}; ` +
        'logs of one test have the same columns and units';
      return { file: log.path, line: log.layout.headerLine, column: null, code: 'other-columns', message };
    });
  if (problems.length > 0) throw new InputError(problems);
  if (logs.length === 1 || isOrdered || !hasClock(first.layout)) return [...logs];
  const begins = new Map(
    logs.map((log) => [log, firstRows(log, schedule, rules)[0]?.first.time ?? Number.POSITIVE_INFINITY]),
  );
  return [...logs].sort((a, b) => begins.get(a)! - begins.get(b)!);
}

/** Whether times are of a clock, and not since a start that nobody stated. */
function hasClock({ timeIndex, start }: SampleLayout): boolean {
  return timeIndex >= 0 || start !== 0;
}

function columnsOf(layout: SampleLayout): string {
  const names = layout.columns.map(({ name, unit }) => `${name} [${unit}]`);
  return [hasClock(layout) ? 'time' : 'elapsed', ...names.filter((name) => !name.startsWith('elapsed'))].join(
    ', ',
  );
}
