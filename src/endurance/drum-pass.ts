import type { EnduranceBlock } from '../documents/kinds.ts';
import type { ExportProfile } from '../logs/export/profile.ts';
import { type SampleDialect, sampleDialect } from '../logs/samples/dialect.ts';
import { openSampleLog, type SampleLog } from '../logs/samples/head.ts';
import { partsOf } from '../logs/samples/part.ts';
import type { Guard } from '../logs/samples/side-file.ts';
import { ProblemList } from '../problem/problem.ts';
import { DoubledHour } from './doubled-hour.ts';
import type { Frame, FrameRange } from './frame.ts';
import { Ledger, type LedgerOptions } from './ledger.ts';
import { LogBook, type ReadLog } from './log-book.ts';
import { inOrder, medianInterval } from './log-order.ts';
import { MinutesWriter, minutesPath, readMinutes } from './minutes-file.ts';
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
}

export interface DrumPassOptions extends LedgerOptions {
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
  /** Bytes read so far, to read in all, and rows so far. */
  readonly onProgress?: (done: number, all: number, rows: number) => void;
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
  const { schedule, rules = LOG_RULES } = options;
  const given = new Map<SampleLog, LogFile>();
  for (const file of files) {
    const whole = typeof file === 'string' ? { path: file, profile: null } : file;
    given.set(openLog(whole, options.dialect), whole);
  }
  const { runner = inlineRunner() } = options;
  const { own, copies } = await apart([...given.keys()], runner);
  const logs = inOrder(own, schedule, rules);
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
    let isFirst = true;
    const emit = (frame: Frame): void => {
      for (const look of looks) for (const problem of look.problems(frame, log)) problems.add(problem);
      ledger.add(frame, !isFirst);
      isFirst = false;
    };
    const pass = { log, file, plan, clock, problems, progress, emit };
    const beside = given.get(log)!.beside ?? null;
    read.push(
      options.minutes && beside !== null
        ? await passKept(pass, { beside, guard: options.minutes }, options)
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

/** One log on its way into the ledger. */
interface LogPass {
  readonly log: SampleLog;
  readonly file: number;
  readonly plan: FoldPlan;
  readonly clock: DoubledHour;
  readonly problems: ProblemList;
  readonly progress: ByteProgress;
  /** Takes each whole minute of the log. */
  readonly emit: (frame: Frame) => void;
}

async function passLog(
  { log, file, plan, clock, problems, progress, emit }: LogPass,
  { runner = inlineRunner(), partBytes = PART }: DrumPassOptions,
  known: string | null = null,
): Promise<ReadLog> {
  const { path, size, layout } = log;
  const hash = known ?? runner.hash(path, size);
  const book = new LogBook(log, file, plan, clock, problems, emit);
  const tasks = partsOf(path, layout.bodyOffset, size, partBytes).map(
    (part) => () => runner.fold({ part, layout, plan }),
  );
  for await (const folded of inTurn(tasks, runner.width)) {
    book.take(folded);
    progress.advance(Math.min(partBytes, size), folded.rows);
  }
  const findings = [...log.findings, ...book.close()];
  return { path, sha256: await hash, bytes: size, rows: book.rows, findings, tallies: book.tallies.all() };
}

/**
 * The same where the minutes are kept beside the log: they are taken from there where the log is still the same byte for
 * byte, which its hash says first, and written there where they are not.
 */
async function passKept(
  pass: LogPass,
  { beside, guard }: { readonly beside: string; readonly guard: Guard },
  options: DrumPassOptions,
): Promise<ReadLog> {
  const { log, file, plan, clock, problems, progress, emit } = pass;
  const { path, size, layout } = log;
  const sha256 = await (options.runner ?? inlineRunner()).hash(path, size);
  const at = minutesPath(beside, sha256, null);
  const key = { layout, plan, clock: clock.state };
  const known = readMinutes(at, sha256, key);
  if (known) {
    for (const frame of known.frames(file)) emit(frame);
    const { rows, findings, tallies, clock: state } = known.end;
    clock.resume(state);
    progress.advance(size, rows);
    return { path, sha256, bytes: size, rows, findings, tallies };
  }
  const writer = new MinutesWriter(at, sha256, key, guard);
  try {
    const put = (frame: Frame): void => {
      writer.put(frame);
      emit(frame);
    };
    const read = await passLog({ ...pass, emit: put }, options, sha256);
    const { rows, findings, tallies } = read;
    if (problems.isEmpty) writer.close({ rows, findings, tallies, clock: clock.state });
    return read;
  } finally {
    writer.discard();
  }
}

/** How far the reading is: bytes of all logs, and rows. */
class ByteProgress {
  readonly #all: number;
  readonly #tell: DrumPassOptions['onProgress'];
  #bytes = 0;
  #rows = 0;

  constructor(all: number, tell: DrumPassOptions['onProgress']) {
    this.#all = all;
    this.#tell = tell;
  }

  advance(bytes: number, rows: number): void {
    this.#bytes = Math.min(this.#bytes + bytes, this.#all);
    this.#rows += rows;
    this.#tell?.(this.#bytes, this.#all, this.#rows);
  }
}

function openLog({ path, profile }: LogFile, dialect: SampleDialect | undefined): SampleLog {
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
