import { createHash } from 'node:crypto';
import { closeSync, openSync, readSync } from 'node:fs';
import { resolve } from 'node:path';

/** By what a file is known again. */
export interface FileHash {
  readonly sha256: string;
  readonly bytes: number;
}

/** The hashes of files, each read once however often it is asked for. */
export interface FileHashes {
  /** Null where no such file can be read. */
  of(path: string): FileHash | null;
}

const CHUNK = 256 * 1024;

export function fileHashes(): FileHashes {
  const known = new Map<string, FileHash | null>();
  const buffer = Buffer.allocUnsafe(CHUNK);
  return {
    of(path) {
      const key = resolve(path);
      let hash = known.get(key);
      if (hash === undefined) {
        hash = hashOf(key, buffer);
        known.set(key, hash);
      }
      return hash;
    },
  };
}

/** In pieces, for logs may be larger than memory. */
function hashOf(path: string, buffer: Buffer): FileHash | null {
  let file: number;
  try {
    file = openSync(path, 'r');
  } catch {
    return null;
  }
  try {
    const hash = createHash('sha256');
    let bytes = 0;
    for (let read = readSync(file, buffer); read > 0; read = readSync(file, buffer)) {
      hash.update(buffer.subarray(0, read));
      bytes += read;
    }
    return { sha256: hash.digest('hex'), bytes };
  } catch {
    return null;
  } finally {
    closeSync(file);
  }
}
