import type { EachOptions } from '../../jobs/analyze-each.ts';
import type { Request } from '../../jobs/documents-of.ts';
import { inOrder } from '../../logs/samples/in-order.ts';
import { InputError } from '../../problem/problem.ts';
import { BATCH_CSV_HEAD } from '../../reports/batch/csv.ts';
import { type BatchRow, batchText } from '../../reports/batch/text.ts';
import { jsonLine } from '../../reports/json-text.ts';
import type { TextOptions } from '../../reports/text/page.ts';
import type { BatchCount } from '../../result/batch.ts';
import { batchStatus } from '../../verdict/batch-status.ts';
import type { Outlet } from '../destination.ts';
import { compileLate } from '../engine.ts';
import type { Progress } from '../progress.ts';
import { type Shell, write } from '../shell.ts';
import { type BatchFormat, type BatchTask, batchAnswerer, type Told } from './answer.ts';
import { taskRunner } from './batch-runner.ts';
import { portions } from './portions.ts';
import { unreadLines } from './unread-lines.ts';

/** Runs that a thread is handed at once: enough that handing over costs nothing, few enough that both cores stay busy. */
const PORTION = 16;

export interface BatchSettings {
  readonly requests: readonly Request[];
  readonly options: EachOptions;
  readonly format: BatchFormat;
  readonly workers: number | null;
  readonly text: TextOptions;
}

/**
 * Analyses runs on all cores and prints each as its turn comes, in the order in which they were given. One that cannot be
 * read is told with its path and stops none of the others.
 *
 * @returns the exit status
 */
export async function analyzeBatch(
  shell: Shell,
  outlet: Outlet,
  progress: Progress,
  { requests, options, format, workers, text }: BatchSettings,
): Promise<number> {
  compileLate();
  const tasks = [...portions(requests, PORTION)].map((some) => ({
    requests: some,
    options,
    format,
    version: text.version,
  }));
  const runner = taskRunner<BatchTask, Told[]>('batch-worker.js', workers, tasks.length, batchAnswerer);
  const printed = new PrintedBatch(shell, outlet, format, text);
  try {
    let done = 0;
    for await (const told of inOrder(tasks, runner.run, runner.ahead)) {
      for (const one of told) if (one.status === 2) progress.end();
      await printed.take(told);
      done += told.length;
      progress.update(done, requests.length);
    }
    progress.end();
    await printed.end();
    outlet.done();
  } catch (error) {
    progress.end();
    outlet.undo();
    throw error;
  } finally {
    await runner.close();
  }
  return batchStatus(printed.statuses);
}

/** What a batch prints, run by run. Held back until one run could be read: where none can, nothing was evaluated. */
class PrintedBatch {
  readonly statuses: Told['status'][] = [];
  readonly #shell: Shell;
  readonly #outlet: Outlet;
  readonly #format: BatchFormat;
  readonly #text: TextOptions;
  readonly #rows: BatchRow[] = [];
  readonly #endings: Record<string, number> = {};
  #held: Told[] | null = [];

  constructor(shell: Shell, outlet: Outlet, format: BatchFormat, text: TextOptions) {
    this.#shell = shell;
    this.#outlet = outlet;
    this.#format = format;
    this.#text = text;
  }

  async take(told: readonly Told[]): Promise<void> {
    for (const { status, ending, row } of told) {
      this.statuses.push(status);
      if (ending !== null) this.#endings[ending] = (this.#endings[ending] ?? 0) + 1;
      if (row !== null) this.#rows.push(row);
    }
    if (this.#held === null) return this.#print(told, ',\n');
    this.#held.push(...told);
    if (this.#held.every(({ status }) => status === 2)) return;
    const all = this.#held;
    this.#held = null;
    await this.#outlet.write(beginning(this.#format, this.#text.version));
    await this.#print(all, '');
  }

  /** @throws InputError with the problems of all runs where none could be read */
  async end(): Promise<void> {
    if (this.#held !== null) {
      if (this.#format === 'ndjson') await this.#outlet.write(this.#held.map(({ text }) => text).join(''));
      throw new InputError(this.#held.flatMap(({ problems }) => problems));
    }
    const unreadable = this.statuses.filter((status) => status === 2).length;
    const count = { runs: this.statuses.length, unreadable, endings: this.#endings };
    await this.#outlet.write(closing(this.#format, this.#rows, count, this.#text));
  }

  async #print(told: readonly Told[], before: string): Promise<void> {
    const [separator, first] = this.#format === 'json' ? [',\n', before] : ['', ''];
    await this.#outlet.write(first + told.map(({ text }) => text).join(separator));
    const unread = told.filter(({ problems }) => problems.length > 0);
    await write(this.#shell.stderr, unread.map(({ file, problems }) => unreadLines(file, problems)).join(''));
  }
}

function beginning(format: BatchFormat, version: string): string {
  switch (format) {
    case 'json':
      return `{\n"schema": "tirelab.batch/1",\n"tool": ${jsonLine({ name: 'tirelab', version })},\n"runs": [\n`;
    case 'csv':
      return BATCH_CSV_HEAD;
    default:
      return '';
  }
}

function closing(format: BatchFormat, rows: BatchRow[], count: BatchCount, text: TextOptions): string {
  switch (format) {
    case 'json':
      return `\n],\n"count": ${jsonLine(count)}\n}\n`;
    case 'text':
      return batchText(rows, count, text);
    default:
      return '';
  }
}
