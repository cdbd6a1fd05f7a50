import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { ThreadPool } from '../logs/samples/threads.ts';
import type { Block, BlockTask } from '../simulation/block.ts';
import { type BlockRunner, runInline } from '../simulation/blocks.ts';

/** Fewer blocks than this are done before a thread has started. */
const WORTH_THREADS = 4;

/**
 * Carries blocks of simulated tests out on several cores. Not built (as in the tests of the source), with one worker or
 * with little to do, the calling thread does.
 *
 * @param workers threads, or null for one a core
 */
export function blockRunner(workers: number | null): BlockRunner {
  const count = workers ?? availableParallelism();
  const entry = new URL('./simulation-worker.js', import.meta.url);
  return async (tasks, finished) => {
    const useful = Math.min(count, tasks.length);
    if (useful < 2 || tasks.length < WORTH_THREADS || !existsSync(fileURLToPath(entry))) {
      return runInline(tasks, finished);
    }
    const pool = new ThreadPool<BlockTask, Block>(entry, useful);
    try {
      return await Promise.all(
        tasks.map(async (task) => {
          const block = await pool.run(task);
          finished(task.tests);
          return block;
        }),
      );
    } finally {
      await pool.close();
    }
  };
}
