import { hashOfFile, ThreadPool } from '../logs/samples/threads.ts';
import { type FoldedPart, PartFolder, type PartTask } from './part-fold.ts';

/** A file to be hashed up to a size. */
export interface HashTask {
  readonly hash: { readonly path: string; readonly size: number };
}

export type DrumTask = PartTask | HashTask;
export type DrumReply = FoldedPart | { readonly sha256: string };

/** Who reads the parts: this thread, or several. The replies are the same. */
export interface PartRunner {
  /** Parts that are worth having under way at once. */
  readonly width: number;
  fold(task: PartTask): Promise<FoldedPart>;
  hash(path: string, size: number): Promise<string>;
  close(): Promise<void>;
}

/** What a thread does with its tasks. */
export function taskAnswerer(): (task: DrumTask) => DrumReply {
  const folder = new PartFolder();
  return (task) =>
    'hash' in task ? { sha256: hashOfFile(task.hash.path, task.hash.size) } : folder.fold(task);
}

/** Reads in the calling thread. */
export function inlineRunner(): PartRunner {
  const folder = new PartFolder();
  return {
    width: 1,
    fold: async (task) => folder.fold(task),
    hash: async (path, size) => hashOfFile(path, size),
    close: async () => {},
  };
}

/**
 * Reads in `count` threads, and hashes in one more.
 *
 * @param entry the built `drum-worker.js`
 */
export function threadRunner(entry: URL, count: number): PartRunner {
  const folds = new ThreadPool<PartTask, FoldedPart>(entry, count);
  const hashes = new ThreadPool<HashTask, { sha256: string }>(entry, 1);
  return {
    width: count + 1,
    fold: (task) => folds.run(task),
    hash: async (path, size) => (await hashes.run({ hash: { path, size } })).sha256,
    close: async () => {
      await Promise.all([folds.close(), hashes.close()]);
    },
  };
}
