import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import type { PartRunner } from '../endurance/part-runner.ts';
import { compileSparingly } from './engine.ts';

/** Bytes below which a log is read before a thread has started. */
const WORTH_THREADS = 16 << 20;

/**
 * Who reads a drum log of so many bytes: several threads where that pays and they are built, else the calling one. The
 * result is the same byte for byte.
 */
export async function drumRunner(bytes: number): Promise<PartRunner> {
  // Loaded only where a drum log is read: a drop test need not wait for threads.
  const { inlineRunner, threadRunner } = await import('../endurance/part-runner.ts');
  const entry = new URL('./drum-worker.js', import.meta.url);
  if (bytes < WORTH_THREADS || !existsSync(fileURLToPath(entry))) return inlineRunner();
  compileSparingly();
  return threadRunner(entry, availableParallelism());
}
