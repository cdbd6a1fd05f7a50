import { createHash } from 'node:crypto';
import { dirname, join } from 'node:path';
import type { Finding } from '../logs/finding.ts';
import type { SampleLayout } from '../logs/samples/layout.ts';
import { type Guard, SideFile, sideLines } from '../logs/samples/side-file.ts';
import type { Tally } from '../logs/samples/tally.ts';
import type { ClockState } from './doubled-hour.ts';
import type { Frame } from './frame.ts';
import { frameOfNumbers, numbersOfFrame, type StoredFrame } from './frame-numbers.ts';
import type { FoldPlan } from './plan.ts';
import { reduceMinute } from './reduction.ts';

/** What the minutes of a log depend on beside its bytes: another protocol, profile or clock makes other minutes. */
export interface MinutesKey {
  readonly layout: SampleLayout;
  readonly plan: FoldPlan;
  /** Where the clock stood before the log. */
  readonly clock: ClockState | null;
}

/** What stands behind the minutes: what else the pass found in the log. */
export interface MinutesEnd {
  readonly rows: number;
  readonly tallies: readonly Tally[];
  readonly findings: readonly Finding[];
  /** Where the clock stood behind it. */
  readonly clock: ClockState | null;
}

const FORMAT = 'tirelab.minutes/1';

/** The file of a log's minutes: beside the log, by its SHA-256, so that another content has another file. */
export function minutesPath(log: string, sha256: string, position: string | null): string {
  return join(dirname(log), `${sha256}${position === null ? '' : `.${position}`}.minutes.jsonl`);
}

/**
 * Writes the minutes of a log while it is read: one line each, with the numbers for people (n, missing, mean, min, max,
 * standard deviation, first and last of each channel) and the whole sums by which minutes are put together again.
 */
export class MinutesWriter {
  readonly #file: SideFile;
  readonly #plan: FoldPlan;
  #minutes = 0;

  constructor(path: string, sha256: string, key: MinutesKey, guard: Guard) {
    this.#file = new SideFile(path, guard);
    this.#plan = key.plan;
    this.#file.put(headLine(sha256, key));
  }

  put(frame: Frame): void {
    const { time, state, rows, channels } = reduceMinute(frame, this.#plan);
    const told = channels.map((c) => [c.n, c.missing, c.mean, c.min, c.max, c.sd, c.first, c.last]);
    this.#file.put(JSON.stringify({ time, state, rows, channels: told, sums: numbersOfFrame(frame) }));
    this.#minutes += 1;
  }

  close(end: MinutesEnd): void {
    this.#file.close((above) => JSON.stringify({ minutes: this.#minutes, ...end, above }));
  }

  discard(): void {
    this.#file.discard();
  }
}

/**
 * Hands on the minutes that were written of a log, where the file is whole and of the same bytes, profile and protocol.
 *
 * @returns null where there is none such: the log is to be read. Nothing was handed on then
 */
export function readMinutes(
  path: string,
  sha256: string,
  key: MinutesKey,
): { readonly end: MinutesEnd; frames(file: number): Generator<Frame> } | null {
  const end = checkedEnd(path, headLine(sha256, key));
  if (end === null) return null;
  return {
    end,
    *frames(file) {
      let line = 0;
      for (const text of sideLines(path)) {
        line += 1;
        if (line === 1 || line > end.minutes + 1) continue;
        const { state, rows, sums } = JSON.parse(text) as StoredMinute;
        yield frameOfNumbers(sums, state, rows, file);
      }
    },
  };
}

interface StoredMinute {
  readonly state: string;
  readonly rows: number;
  readonly sums: StoredFrame;
}

/** The last line, where it is the hash of those above it and the first is the one expected. */
function checkedEnd(path: string, head: string): (MinutesEnd & { readonly minutes: number }) | null {
  const hash = createHash('sha256');
  let count = 0;
  let last: string | null = null;
  for (const line of sideLines(path)) {
    if (count === 0 && line !== head) return null;
    if (last !== null) hash.update(`${last}\n`);
    last = line;
    count += 1;
  }
  if (last === null || count < 2) return null;
  try {
    const end = JSON.parse(last) as MinutesEnd & { readonly above: string; readonly minutes: number };
    return end.above === hash.digest('hex') && end.minutes === count - 2 ? end : null;
  } catch {
    return null;
  }
}

function headLine(sha256: string, key: MinutesKey): string {
  const columns = ['n', 'missing', 'mean', 'min', 'max', 'sd', 'first', 'last'];
  const channels = key.plan.channels.map(({ name }) => name);
  return JSON.stringify({ format: FORMAT, sha256, channels, columns, ...key });
}
