import { createHash } from 'node:crypto';
import { closeSync, openSync, readSync } from 'node:fs';
import { parentPort, Worker } from 'node:worker_threads';

interface Waiting<Task, Reply> {
  readonly task: Task;
  readonly resolve: (reply: Reply) => void;
  readonly reject: (error: Error) => void;
}

/** Threads that all run one entry; a task goes to the next that is free. */
export class ThreadPool<Task, Reply> {
  readonly #idle: Worker[] = [];
  readonly #threads: Worker[];
  readonly #queue: Waiting<Task, Reply>[] = [];
  readonly #busy = new Map<Worker, Waiting<Task, Reply>>();

  /** @param entry a module that calls `serveTasks` */
  constructor(entry: URL, count: number) {
    this.#threads = Array.from({ length: count }, () => this.#start(entry));
    this.#idle.push(...this.#threads);
  }

  run(task: Task): Promise<Reply> {
    return new Promise((resolve, reject) => {
      this.#queue.push({ task, resolve, reject });
      this.#next();
    });
  }

  async close(): Promise<void> {
    await Promise.all(this.#threads.map((thread) => thread.terminate()));
  }

  #start(entry: URL): Worker {
    const thread = new Worker(entry);
    thread.on('message', (message: { reply: Reply } | { error: Error }) => {
      const waiting = this.#busy.get(thread);
      this.#busy.delete(thread);
      this.#idle.push(thread);
      if ('reply' in message) waiting?.resolve(message.reply);
      else waiting?.reject(message.error);
      this.#next();
    });
    thread.on('error', (error) => {
      this.#busy.get(thread)?.reject(error);
      this.#busy.delete(thread);
    });
    return thread;
  }

  #next(): void {
    while (this.#idle.length > 0 && this.#queue.length > 0) {
      const thread = this.#idle.shift()!;
      const waiting = this.#queue.shift()!;
      this.#busy.set(thread, waiting);
      thread.postMessage(waiting.task);
    }
  }
}

/** The other end of a pool: answers each task in its turn. @param buffersOf what a reply hands over uncopied */
export function serveTasks<Task, Reply>(
  answer: (task: Task) => Reply | Promise<Reply>,
  buffersOf: (reply: Reply) => readonly ArrayBufferLike[],
): void {
  parentPort?.on('message', async (task: Task) => {
    try {
      const reply = await answer(task);
      parentPort?.postMessage({ reply }, buffersOf(reply) as ArrayBuffer[]);
    } catch (error) {
      parentPort?.postMessage({ error });
    }
  });
}

/** SHA-256 in hexadecimal of the first `size` bytes of a file. */
export function hashOfFile(path: string, size: number): string {
  const hash = createHash('sha256');
  const bytes = Buffer.alloc(Math.min(1 << 20, Math.max(1, size)));
  const handle = openSync(path, 'r');
  try {
    for (let at = 0; at < size; ) {
      const read = readSync(handle, bytes, 0, Math.min(bytes.length, size - at), at);
      if (read === 0) break;
      hash.update(bytes.subarray(0, read));
      at += read;
    }
  } finally {
    closeSync(handle);
  }
  return hash.digest('hex');
}
