import type { SampleLog } from '../logs/samples/head.ts';
import { inOrder } from '../logs/samples/in-order.ts';
import { partsOf } from '../logs/samples/part.ts';
import type { Guard } from '../logs/samples/side-file.ts';
import type { ProblemList } from '../problem/problem.ts';
import type { DoubledHour } from './doubled-hour.ts';
import type { Frame } from './frame.ts';
import { LogBook, type ReadLog } from './log-book.ts';
import { MinutesWriter, minutesPath, readMinutes } from './minutes-file.ts';
import { inlineRunner, type PartRunner } from './part-runner.ts';
import type { FoldPlan } from './plan.ts';

const PART = 8 << 20;

/** How logs are read; no result depends on any of it. */
export interface ReadingOptions {
  readonly runner?: PartRunner;
  /** Bytes of a part. */
  readonly partBytes?: number;
  /** Bytes read so far, to read in all, and rows so far. */
  readonly onProgress?: (done: number, all: number, rows: number) => void;
}

/** One log on its way into the ledger. */
export interface LogPass {
  readonly log: SampleLog;
  readonly file: number;
  readonly plan: FoldPlan;
  readonly clock: DoubledHour;
  readonly problems: ProblemList;
  readonly progress: ByteProgress;
  /** Takes each whole minute of the log. */
  readonly emit: (frame: Frame) => void;
}

/** Reads a log part by part. */
export async function passLog(
  { log, file, plan, clock, problems, progress, emit }: LogPass,
  { runner = inlineRunner(), partBytes = PART }: ReadingOptions,
  known: string | null = null,
): Promise<ReadLog> {
  const { path, size, layout } = log;
  const hash = known ?? runner.hash(path, size);
  const book = new LogBook(log, file, plan, clock, problems, emit);
  const parts = partsOf(path, layout.bodyOffset, size, partBytes);
  for await (const folded of inOrder(parts, (part) => runner.fold({ part, layout, plan }), runner.width)) {
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
export async function passKept(
  pass: LogPass,
  { at: { beside, position }, guard }: KeptAt,
  options: ReadingOptions,
): Promise<ReadLog> {
  const { log, file, plan, clock, problems, progress, emit } = pass;
  const { path, size, layout } = log;
  const sha256 = await (options.runner ?? inlineRunner()).hash(path, size);
  const at = minutesPath(beside, sha256, position);
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

/** Where minutes are kept, and who is told of a file that is not done. */
interface KeptAt {
  readonly at: { readonly beside: string; readonly position: string | null };
  readonly guard: Guard;
}

/** How far the reading is: bytes of all logs, and rows. */
export class ByteProgress {
  readonly #all: number;
  readonly #tell: ReadingOptions['onProgress'];
  #bytes = 0;
  #rows = 0;

  constructor(all: number, tell: ReadingOptions['onProgress']) {
    this.#all = all;
    this.#tell = tell;
  }

  advance(bytes: number, rows: number): void {
    this.#bytes = Math.min(this.#bytes + bytes, this.#all);
    this.#rows += rows;
    this.#tell?.(this.#bytes, this.#all, this.#rows);
  }
}
