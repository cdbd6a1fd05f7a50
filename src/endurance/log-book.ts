import type { Finding } from '../logs/finding.ts';
import { type SampleLog, sizeNow } from '../logs/samples/head.ts';
import { Tallies, type Tally } from '../logs/samples/tally.ts';
import type { Problem, ProblemList } from '../problem/problem.ts';
import type { DoubledHour } from './doubled-hour.ts';
import type { Frame } from './frame.ts';
import { FrameChain } from './frame-chain.ts';
import { readTape } from './frame-tape.ts';
import type { FoldedPart } from './part-fold.ts';
import type { FoldPlan } from './plan.ts';

/** A log that was read to its end. */
export interface ReadLog {
  readonly path: string;
  readonly sha256: string;
  readonly bytes: number;
  readonly rows: number;
  readonly findings: readonly Finding[];
  readonly tallies: readonly Tally[];
}

/** Puts the parts of one log together: whole minutes go out, and lines count from the top of the file again. */
export class LogBook {
  rows = 0;
  readonly tallies = new Tallies();
  readonly #log: SampleLog;
  readonly #file: number;
  readonly #plan: FoldPlan;
  readonly #clock: DoubledHour;
  readonly #chain: FrameChain;
  readonly #problems: ProblemList;
  #line: number;

  /**
   * @param file place of the log among the logs
   * @param emit is given each whole minute, linked to the one before it in the log
   */
  constructor(
    log: SampleLog,
    file: number,
    plan: FoldPlan,
    clock: DoubledHour,
    problems: ProblemList,
    emit: (frame: Frame) => void,
  ) {
    this.#log = log;
    this.#file = file;
    this.#plan = plan;
    this.#clock = clock;
    this.#chain = new FrameChain(plan, emit);
    this.#problems = problems;
    this.#line = log.layout.headerLine + 1;
  }

  take(part: FoldedPart): void {
    const { path, layout } = this.#log;
    const lines = this.#line;
    const count = { columns: layout.columns.length, channels: this.#plan.channels.length };
    for (const frame of readTape(part.frames, count, this.#file, lines)) {
      this.#chain.add(this.#clock.settle(frame));
    }
    for (const tally of part.tallies) this.tallies.merge(tally, lines);
    for (const problem of part.problems) this.#problems.add(moved(problem, path, lines));
    for (const [code, count] of part.problemsBeyond) this.#problems.addMore(path, code, count);
    this.#line += part.lines;
    this.rows += part.rows;
  }

  /** Behind the last part: hands on the last minute, and what is left to say of the log. */
  close(): readonly Finding[] {
    this.#chain.end();
    const { path, layout, size } = this.#log;
    if (this.rows === 0 && this.#problems.isEmpty) {
      const message = 'found a header only, expected rows after it';
      this.#problems.add({ file: path, line: layout.headerLine, column: null, code: 'no-rows', message });
    }
    const now = sizeNow(path);
    if (now <= size) return this.#clock.findings();
    const message = `the log grew from ${size} to ${now} bytes while it was read: what came behind byte ${size} is not in the result`;
    return [...this.#clock.findings(), { code: 'grew', message, line: null, column: null }];
  }
}

function moved(problem: Omit<Problem, 'file'>, file: string, lines: number): Problem {
  return { ...problem, file, line: problem.line === null ? null : problem.line + lines };
}
