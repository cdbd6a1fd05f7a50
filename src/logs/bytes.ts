import { createHash } from 'node:crypto';
import { readFileSync, statSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { InputError } from '../problem/problem.ts';
import { noteRead } from './read-files.ts';

/** A file to open under one path that messages and results call by another: the one that a document has. */
export interface NamedFile {
  readonly path: string;
  readonly named: string;
}

/** A file by its path, or a stream that stands for standard input and is shown as `-`. */
export type LogSource = string | NamedFile | AsyncIterable<Uint8Array>;

/** Small writes of a pipe are gathered to about this much, so that a long line in many pieces stays linear. */
const CHUNK = 64 * 1024;

/** The bytes of one input, in chunks, read once; hash and length are those of all that was read. */
export class ByteReader implements AsyncIterable<Uint8Array> {
  /** As the user gave it; `-` for standard input. */
  readonly path: string;
  readonly #source: LogSource;
  readonly #hash = createHash('sha256');
  #bytes = 0;

  constructor(source: LogSource) {
    this.#source = source;
    this.path = typeof source === 'string' ? source : 'named' in source ? source.named : '-';
  }

  /** How many bytes were read so far. */
  get bytes(): number {
    return this.#bytes;
  }

  /** SHA-256 in hexadecimal; asked for once, after the last chunk. */
  sha256(): string {
    return this.#hash.digest('hex');
  }

  /** @throws InputError when the input is missing, a directory, unreadable or empty. */
  async *[Symbol.asyncIterator](): AsyncGenerator<Uint8Array> {
    try {
      for await (const chunk of gathered(await this.#open())) {
        this.#hash.update(chunk);
        this.#bytes += chunk.length;
        yield chunk;
      }
    } catch (error) {
      throw isSystemError(error) ? this.#problem(...reasonOf(error)) : error;
    }
    if (this.#bytes === 0) {
      throw this.#problem('empty-file', 'the file is empty, expected a header row and rows');
    }
  }

  async #open(): Promise<AsyncIterable<Uint8Array>> {
    const source = this.#source;
    if (typeof source !== 'string' && !('named' in source)) return source;
    const path = typeof source === 'string' ? source : source.path;
    noteRead(path);
    // Most logs of drops are small: read at once, at a fraction of what a stream costs. A pipe has no size, and may wait.
    const stats = statSync(path);
    if (stats.isFile() && stats.size <= CHUNK) return once(readFileSync(path));
    const handle = await open(path);
    // The stream closes the handle at its end, on error, and when its reader leaves early.
    return handle.createReadStream({ highWaterMark: CHUNK });
  }

  #problem(code: string, message: string): InputError {
    return new InputError([{ file: this.path, line: null, column: null, code, message }]);
  }
}

async function* once(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  if (bytes.length > 0) yield bytes;
}

async function* gathered(source: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  let parts: Uint8Array[] = [];
  let length = 0;
  for await (const part of source) {
    parts.push(part);
    length += part.length;
    if (length < CHUNK) continue;
    yield parts.length === 1 ? part : Buffer.concat(parts);
    parts = [];
    length = 0;
  }
  if (length > 0) yield Buffer.concat(parts);
}

function isSystemError(error: unknown): error is NodeJS.ErrnoException {
  return error instanceof Error && 'syscall' in error && 'code' in error;
}

function reasonOf(error: NodeJS.ErrnoException): [code: string, message: string] {
  switch (error.code) {
    case 'ENOENT':
    case 'ENOTDIR':
      return ['no-such-file', 'there is no such file; check the path'];
    case 'EISDIR':
      return ['is-a-directory', 'this is a directory, expected a file: name the log itself'];
    case 'EACCES':
    case 'EPERM':
      return ['unreadable-file', 'the file may not be read; check its permissions'];
    default:
      return ['unreadable-file', `the file cannot be read (${error.code ?? 'unknown reason'})`];
  }
}
