import type { EnduranceBlock } from '../documents/kinds.ts';
import type { ExportProfile } from '../logs/export/profile.ts';
import { type SampleDialect, sampleDialect } from '../logs/samples/dialect.ts';
import { openSampleLog, type SampleLog } from '../logs/samples/head.ts';
import type { Guard } from '../logs/samples/side-file.ts';
import { ProblemList } from '../problem/problem.ts';
import { DoubledHour } from './doubled-hour.ts';
import type { Frame, FrameRange } from './frame.ts';
import { Ledger, type LedgerOptions } from './ledger.ts';
import type { ReadLog } from './log-book.ts';
import { inOrder, medianInterval } from './log-order.ts';
import { ByteProgress, passKept, passLog, type ReadingOptions } from './log-pass.ts';
import { PartFolder } from './part-fold.ts';
import { inlineRunner, type PartRunner } from './part-runner.ts';
import { type FoldPlan, planFold } from './plan.ts';
import { Plausibility } from './plausible.ts';
import { LOG_RULES, type LogRules } from './rules.ts';
import { UnitStep } from './unit-step.ts';

/** A log and how its rig writes it; null for the plain form. */
export interface LogFile {
  readonly path: string;
  readonly profile: ExportProfile | null;
  /** The log beside which its minutes are kept; none where it is a copy. */
  readonly beside?: string | null;
  /** Position of the drum whose columns are read, where each has its own. */
  readonly position?: string | null;
  /** Milliseconds since 1970 between which a tyre stood there: only minutes that begin in between are its own. */
  readonly window?: { readonly from: number; readonly to: number };
}

export interface DrumPassOptions extends LedgerOptions, ReadingOptions {
  /** Of all logs, where their profiles do not say it. */
  readonly dialect?: SampleDialect;
  readonly schedule: readonly EnduranceBlock[];
  /** Hz, of the protocol; null takes what the log itself keeps to. */
  readonly sampling: number | null;
  readonly rules?: LogRules;
  /** Is given every minute in order, complete. */
  readonly onFrame?: (frame: Frame, plan: FoldPlan) => void;
  /** Whether the logs stand in the order in which they are to be read; else it is that of their times. */
  readonly isOrdered?: boolean;
  /** Keeps the minutes of each log beside it, and uses them again; told of files that an interruption must take away. */
  readonly minutes?: Guard;
}

/** All that one pass over the logs of a test finds; steps and milliseconds, to be said by `summarise`. */
export interface DrumPass {
  readonly logs: readonly ReadLog[];
  readonly plan: FoldPlan;
  readonly rules: LogRules;
  readonly schedule: readonly EnduranceBlock[];
  readonly ledger: Ledger;
}

/**
 * Reads the drum logs of one test, once, in constant memory: each is cut into parts, which are folded to minutes
 * by whoever is free, and the minutes are put together in their order.
 *
 * @throws InputError with the problems of all logs.
 */
export async function passDrumLogs(
  files: readonly (LogFile | string)[],
  options: DrumPassOptions,
): Promise<DrumPass> {
  const { schedule, rules = LOG_RULES } = options;
  const given = new Map<SampleLog, LogFile>();
  for (const file of files) {
    const whole = typeof file === 'string' ? { path: file, profile: null } : file;
    given.set(openLog(whole, options.dialect), whole);
  }
  const { runner = inlineRunner() } = options;
  const opened = [...given.keys()];
  const { own, copies } = options.isOrdered ? { own: opened, copies: [] } : await apart(opened, runner);
  const logs = inOrder(own, schedule, rules, options.isOrdered);
  const first = logs[0]!;
  const interval = rules.interval ?? (options.sampling ? 1 / options.sampling : null);
  const milliseconds = interval ? interval * 1000 : medianInterval(first, schedule, rules);
  const plan = planFold(first.layout, schedule, rules, milliseconds);
  const reread = (range: FrameRange): Frame[] => rereadRows(range, logs[range.file]!, plan);
  const onFrame = (frame: Frame) => options.onFrame?.(frame, plan);
  const ledger = new Ledger(plan, schedule, rules, reread, onFrame, options);
  const problems = new ProblemList();
  const clock = new DoubledHour(first.layout.dialect);
  const looks = [new Plausibility(plan, reread), new UnitStep(plan, schedule)];
  const progress = new ByteProgress(
    logs.reduce((sum, { size }) => sum + size, 0),
    options.onProgress,
  );
  const read: ReadLog[] = [];
  for (const [file, log] of logs.entries()) {
    const { window, beside = null, position = null } = given.get(log)!;
    let isFirst = true;
    const emit = (frame: Frame): void => {
      if (window && (frame.first.time < window.from || frame.first.time >= window.to)) return;
      for (const look of looks) for (const problem of look.problems(frame, log)) problems.add(problem);
      ledger.add(frame, !isFirst);
      isFirst = false;
    };
    const pass = { log, file, plan, clock, problems, progress, emit };
    const before = given.get(logs[file - 1]!)?.window;
    if (window && before && window.from !== before.from) ledger.interrupt();
    read.push(
      options.minutes && beside !== null
        ? await passKept(pass, { at: { beside, position }, guard: options.minutes }, options)
        : await passLog(pass, options),
    );
  }
  problems.throwIfAny();
  ledger.close();
  return { logs: [...read, ...copies], plan, rules, schedule, ledger };
}

/** Copies of a log, byte for byte, are read once: `log (2).csv` is no second test. */
async function apart(
  logs: readonly SampleLog[],
  runner: PartRunner,
): Promise<{ readonly own: SampleLog[]; readonly copies: ReadLog[] }> {
  const own: SampleLog[] = [];
  const copies: ReadLog[] = [];
  for (const log of logs) {
    const { path, size } = log;
    const twins = own.filter((other) => other.size === size);
    const sha256 = twins.length === 0 ? null : await runner.hash(path, size);
    const hashes = await Promise.all(twins.map((twin) => runner.hash(twin.path, size)));
    const twin = twins[hashes.indexOf(sha256 ?? '')];
    if (!twin || sha256 === null) {
      own.push(log);
      continue;
    }
    const message = `the same as ${twin.path}, byte for byte: read once`;
    const findings = [{ code: 'copy', message, line: null, column: null }];
    copies.push({ path, sha256, bytes: size, rows: 0, findings, tallies: [] });
  }
  return { own, copies };
}

function openLog({ path, profile, position }: LogFile, dialect: SampleDialect | undefined): SampleLog {
  return openSampleLog(path, dialect ?? sampleDialect(profile), profile, position ?? null);
}

function rereadRows(range: FrameRange, log: SampleLog, plan: FoldPlan): Frame[] {
  const part = { path: log.path, from: range.from, to: range.to, size: log.size };
  const rows = new PartFolder().rows({ part, layout: log.layout, plan });
  return rows.map((frame) => movedRow(frame, range));
}

function movedRow(frame: Frame, { file, line, shift = 0 }: FrameRange): Frame {
  const mark = { ...frame.first, line: frame.first.line + line, time: frame.first.time + shift };
  const conditions = frame.conditions.map((sums) => ({ ...sums, firstLine: mark.line, lastLine: mark.line }));
  const ranges = frame.ranges.map((range) => ({ ...range, file, line: range.line + line }));
  return { ...frame, ranges, first: mark, last: mark, conditions };
}
