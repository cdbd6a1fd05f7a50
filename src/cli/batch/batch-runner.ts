import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { ThreadPool } from '../../logs/samples/threads.ts';

/** Who carries the tasks of a batch out. */
export interface TaskRunner<Task, Reply> {
  readonly run: (task: Task) => Promise<Reply>;
  /** Tasks that may be under way before the first reply has been taken. */
  readonly ahead: number;
  readonly close: () => Promise<void>;
}

/**
 * Threads that run an entry of dist/, or the calling thread where there is little to do, one worker was asked for, or
 * nothing is built (as in the tests of the source). Replies are the same either way.
 *
 * @param file of dist/
 * @param workers threads, or null for one a core
 * @param tasks how many there will be
 * @param inline what the calling thread answers
 */
export function taskRunner<Task, Reply>(
  file: string,
  workers: number | null,
  tasks: number,
  inline: () => (task: Task) => Reply | Promise<Reply>,
): TaskRunner<Task, Reply> {
  const useful = Math.min(workers ?? availableParallelism(), tasks);
  const entry = new URL(`./${file}`, import.meta.url);
  if (useful < 2 || !existsSync(fileURLToPath(entry))) {
    const answer = inline();
    return { run: async (task) => answer(task), ahead: 1, close: async () => {} };
  }
  const pool = new ThreadPool<Task, Reply>(entry, useful);
  return { run: (task) => pool.run(task), ahead: 3 * useful, close: () => pool.close() };
}
