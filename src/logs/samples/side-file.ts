import { createHash, type Hash, randomBytes } from 'node:crypto';
import { closeSync, openSync, readSync, renameSync, rmSync, writeSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { InputError } from '../../problem/problem.ts';

/** Characters gathered before they are written, and bytes read at once. */
const CHUNK = 1 << 20;

/** Is told of a file that an interruption must take away, and gives what ends the watch. */
export type Guard = (temporary: string) => () => void;

/**
 * Lines that become a file at once or not at all: written beside it under another name, and renamed when the last line
 * stands, which has the SHA-256 of all lines before it.
 */
export class SideFile {
  readonly #path: string;
  readonly #temporary: string;
  readonly #hash: Hash = createHash('sha256');
  readonly #forget: () => void;
  #handle: number | null;
  #text: string[] = [];
  #length = 0;

  /** @throws InputError where the folder cannot be written to */
  constructor(path: string, guard: Guard) {
    this.#path = path;
    // Random, since two commands may write the same file at once; never seen in any result.
    this.#temporary = join(dirname(path), `.${basename(path)}.${randomBytes(4).toString('hex')}.tmp`);
    try {
      this.#handle = openSync(this.#temporary, 'w');
    } catch (error) {
      const reason = (error as NodeJS.ErrnoException).code ?? 'unknown reason';
      const message = `the minutes cannot be written beside the log (${reason}); leave out --keep-minutes, or make the folder writable`;
      throw new InputError([{ file: path, line: null, column: null, code: 'unwritable-file', message }]);
    }
    this.#forget = guard(this.#temporary);
  }

  put(line: string): void {
    this.#text.push(line, '\n');
    this.#length += line.length + 1;
    if (this.#length >= CHUNK) this.#flush();
  }

  /** Writes the last line, made of the hash of those before it, and gives the file its name. */
  close(last: (sha256: string) => string): void {
    this.#flush();
    const line = `${last(this.#hash.digest('hex'))}\n`;
    writeSync(this.#handle!, line);
    closeSync(this.#handle!);
    this.#handle = null;
    renameSync(this.#temporary, this.#path);
    this.#forget();
  }

  /** Leaves nothing behind; does nothing behind `close`. */
  discard(): void {
    if (this.#handle === null) return;
    closeSync(this.#handle);
    this.#handle = null;
    rmSync(this.#temporary, { force: true });
    this.#forget();
  }

  #flush(): void {
    const bytes = Buffer.from(this.#text.join(''));
    this.#hash.update(bytes);
    for (let at = 0; at < bytes.length; ) at += writeSync(this.#handle!, bytes, at);
    this.#text = [];
    this.#length = 0;
  }
}

/** The lines of a side file in constant memory; none where there is no such file. */
export function* sideLines(path: string): Generator<string> {
  let handle: number;
  try {
    handle = openSync(path, 'r');
  } catch {
    return;
  }
  try {
    const bytes = Buffer.alloc(CHUNK);
    const decoder = new TextDecoder('utf-8');
    let rest = '';
    for (;;) {
      const read = readSync(handle, bytes, 0, bytes.length, null);
      if (read === 0) break;
      const lines = (rest + decoder.decode(bytes.subarray(0, read), { stream: true })).split('\n');
      rest = lines.pop()!;
      yield* lines;
    }
  } finally {
    closeSync(handle);
  }
}
