import { statSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';
import type { LogSource } from '../logs/bytes.ts';
import { InputError } from '../problem/problem.ts';
import { UsageError } from './failure.ts';

/** Between two looks at the files, ms: a drop takes minutes, and a person waits for the advice. */
const LOOK_EVERY = 200;

/**
 * Gives once at the start, and then whenever one of the files has changed. It looks at them again and again, since a file
 * on a share of the rig's computer gives no notice.
 *
 * @throws UsageError for standard input
 * @throws InputError for a file that has become smaller or is gone: rows that were advised on are no longer there
 */
export async function* grown(sources: readonly LogSource[]): AsyncGenerator<void> {
  const files = sources.map((source) => {
    if (typeof source === 'string') return { path: source, named: source };
    if ('named' in source) return source;
    throw new UsageError('--follow needs a file; standard input ends when its writer does');
  });
  let before = files.map(({ path, named }) => sizeOf(path, named));
  yield;
  for (;;) {
    await pause(LOOK_EVERY);
    const now = files.map(({ path, named }) => sizeOf(path, named));
    now.forEach(({ size }, i) => {
      if (size < before[i]!.size) throw shrunk(files[i]!.named, before[i]!.size, size);
    });
    const changed = now.some(({ size, time }, i) => size !== before[i]!.size || time !== before[i]!.time);
    before = now;
    if (changed) yield;
  }
}

function sizeOf(path: string, named: string): { size: number; time: number } {
  try {
    const { size, mtimeMs } = statSync(path);
    return { size, time: mtimeMs };
  } catch {
    throw problem(named, 'no-such-file', 'there is no such file; check the path');
  }
}

function shrunk(named: string, before: number, now: number): InputError {
  const message = `the log has become smaller while it was followed (${before} to ${now} bytes), expected rows to be added only; find out who rewrote it, then start again`;
  return problem(named, 'log-shrank', message);
}

function problem(file: string, code: string, message: string): InputError {
  return new InputError([{ file, line: null, column: null, code, message }]);
}
