import type { EnduranceBlock } from '../documents/kinds.ts';
import type { ExportProfile } from '../logs/export/profile.ts';
import type { Finding } from '../logs/finding.ts';
import { type SampleDialect, sampleDialect } from '../logs/samples/dialect.ts';
import { openSampleLog, type SampleLog } from '../logs/samples/head.ts';
import type { SampleLayout } from '../logs/samples/layout.ts';
import { partsOf } from '../logs/samples/part.ts';
import { Tallies, type Tally } from '../logs/samples/tally.ts';
import { InputError, type Problem, ProblemList } from '../problem/problem.ts';
import type { Frame, FrameRange } from './frame.ts';
import { readTape } from './frame-tape.ts';
import { Ledger } from './ledger.ts';
import { type FoldedPart, PartFolder } from './part-fold.ts';
import { inlineRunner, type PartRunner } from './part-runner.ts';
import { type FoldPlan, planFold } from './plan.ts';
import { LOG_RULES, type LogRules } from './rules.ts';

/** A log and how its rig writes it; null for the plain form. */
export interface LogFile {
  readonly path: string;
  readonly profile: ExportProfile | null;
}

export interface DrumPassOptions {
  /** Of all logs, where their profiles do not say it. */
  readonly dialect?: SampleDialect;
  readonly schedule: readonly EnduranceBlock[];
  /** Hz, of the protocol; null takes what the log itself keeps to. */
  readonly sampling: number | null;
  readonly rules?: LogRules;
  readonly runner?: PartRunner;
  /** Bytes of a part; no result depends on it. */
  readonly partBytes?: number;
  /** Is given every minute in order, complete. */
  readonly onFrame?: (frame: Frame, plan: FoldPlan) => void;
  /** Bytes read so far, and to read in all. */
  readonly onProgress?: (done: number, all: number) => void;
}

/** A log that was read to its end. */
export interface ReadLog {
  readonly path: string;
  readonly sha256: string;
  readonly bytes: number;
  readonly rows: number;
  readonly findings: readonly Finding[];
  readonly tallies: readonly Tally[];
}

/** All that one pass over the logs of a test finds; steps and milliseconds, to be said by `summarise`. */
export interface DrumPass {
  readonly logs: readonly ReadLog[];
  readonly plan: FoldPlan;
  readonly rules: LogRules;
  readonly schedule: readonly EnduranceBlock[];
  readonly ledger: Ledger;
}

const PART = 8 << 20;

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
  const { schedule, rules = LOG_RULES, runner = inlineRunner(), partBytes = PART } = options;
  const logs = inOrder(
    files.map((file) => openLog(file, options.dialect)),
    schedule,
    rules,
  );
  const { layout } = logs[0]!;
  const interval = rules.interval ?? (options.sampling ? 1 / options.sampling : null);
  const plan = planFold(
    layout,
    schedule,
    rules,
    interval ? interval * 1000 : medianInterval(logs[0]!, schedule, rules),
  );
  const reread = (range: FrameRange): Frame[] => rereadRows(range, logs[range.file]!, plan);
  const ledger = new Ledger(plan, schedule, rules, reread, (frame) => options.onFrame?.(frame, plan));
  const problems = new ProblemList();
  const all = logs.reduce((sum, { size }) => sum + size, 0);
  let done = 0;
  const read: ReadLog[] = [];
  for (const [file, log] of logs.entries()) {
    const hash = runner.hash(log.path, log.size);
    const book = new LogBook(log, file, plan, ledger, problems);
    const parts = partsOf(log.path, log.layout.bodyOffset, log.size, partBytes);
    const tasks = parts.map((part) => () => runner.fold({ part, layout: log.layout, plan }));
    for await (const folded of inTurn(tasks, runner.width)) {
      book.take(folded);
      done += Math.min(partBytes, log.size);
      options.onProgress?.(Math.min(done, all), all);
    }
    read.push(book.close(await hash));
  }
  problems.throwIfAny();
  ledger.close();
  return { logs: read, plan, rules, schedule, ledger };
}

function openLog(file: LogFile | string, dialect: SampleDialect | undefined): SampleLog {
  const { path, profile } = typeof file === 'string' ? { path: file, profile: null } : file;
  return openSampleLog(path, dialect ?? sampleDialect(profile), profile);
}

/** Replies in the order of the tasks, of which at most `width` are under way. */
async function* inTurn<T>(tasks: readonly (() => Promise<T>)[], width: number): AsyncGenerator<T> {
  const underWay: Promise<T>[] = [];
  let next = 0;
  while (next < tasks.length || underWay.length > 0) {
    while (next < tasks.length && underWay.length < width) underWay.push(tasks[next++]!());
    yield await underWay.shift()!;
  }
}

/** Puts the parts of one log together: lines count from the top of the file again. */
class LogBook {
  #line: number;
  #rows = 0;
  readonly #tallies = new Tallies();
  readonly #log: SampleLog;
  readonly #file: number;
  readonly #plan: FoldPlan;
  readonly #ledger: Ledger;
  readonly #problems: ProblemList;

  constructor(log: SampleLog, file: number, plan: FoldPlan, ledger: Ledger, problems: ProblemList) {
    this.#log = log;
    this.#file = file;
    this.#plan = plan;
    this.#ledger = ledger;
    this.#problems = problems;
    this.#line = log.layout.headerLine + 1;
  }

  take(part: FoldedPart): void {
    const lines = this.#line;
    const count = { columns: this.#log.layout.columns.length, channels: this.#plan.channels.length };
    for (const frame of readTape(part.frames, count, this.#file, lines)) this.#ledger.add(frame);
    for (const tally of part.tallies) this.#tallies.merge(tally, lines);
    for (const problem of part.problems) this.#problems.add(moved(problem, this.#log.path, lines));
    this.#line += part.lines;
    this.#rows += part.rows;
  }

  close(sha256: string): ReadLog {
    const { path, size, findings, layout } = this.#log;
    if (this.#rows === 0) {
      const message = 'found a header only, expected rows after it';
      this.#problems.add({ file: path, line: layout.headerLine, column: null, code: 'no-rows', message });
    }
    return { path, sha256, bytes: size, rows: this.#rows, findings, tallies: this.#tallies.all() };
  }
}

function moved(problem: Omit<Problem, 'file'>, file: string, lines: number): Problem {
  return { ...problem, file, line: problem.line === null ? null : problem.line + lines };
}

function rereadRows(range: FrameRange, log: SampleLog, plan: FoldPlan): Frame[] {
  const part = { path: log.path, from: range.from, to: range.to, size: log.size };
  const rows = new PartFolder().rows({ part, layout: log.layout, plan });
  return rows.map((frame) => movedRow(frame, range));
}

function movedRow(frame: Frame, { file, line }: FrameRange): Frame {
  const mark = { ...frame.first, line: frame.first.line + line };
  const conditions = frame.conditions.map((sums) => ({ ...sums, firstLine: mark.line, lastLine: mark.line }));
  const ranges = frame.ranges.map((range) => ({ ...range, file, line: range.line + line }));
  return { ...frame, ranges, first: mark, last: mark, conditions };
}

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

function medianInterval(log: SampleLog, schedule: readonly EnduranceBlock[], rules: LogRules): number {
  const times = firstRows(log, schedule, rules).map((row) => row.first.time);
  const steps = times
    .slice(1)
    .map((time, i) => time - times[i]!)
    .filter((step) => step > 0);
  steps.sort((a, b) => a - b);
  return steps[Math.floor(steps.length / 2)] ?? 1000;
}

/** Logs by their first time, where they have the time of a clock; all must have the same columns and units. */
function inOrder(
  logs: readonly SampleLog[],
  schedule: readonly EnduranceBlock[],
  rules: LogRules,
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
  if (logs.length === 1 || !hasClock(first.layout)) return [...logs];
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
