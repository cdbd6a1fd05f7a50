import { readFileSync, type Stats, statSync } from 'node:fs';
import { noteRead } from '../logs/read-files.ts';
import { InputError } from '../problem/problem.ts';

/** A document is written by a person: beyond this size it is something else. */
const LARGEST = 1024 * 1024;

/**
 * The bytes of a document.
 *
 * @param path what to open.
 * @param named how messages call it, where that differs: a path in a run is named as the run has it.
 * @param largest bytes it may have.
 * @throws InputError for a file that is missing, a directory, no regular file, unreadable or larger than that, by default 1 MiB.
 */
export function readDocumentBytes(path: string, named = path, largest = LARGEST): Uint8Array {
  try {
    const reason = refusal(statSync(path), largest);
    if (reason) throw refuse(named, ...reason);
    noteRead(path);
    return readFileSync(path);
  } catch (error) {
    if (error instanceof InputError) throw error;
    throw refuse(named, ...fileTrouble(error));
  }
}

/** Code and message for what the file system answered. */
export function fileTrouble(error: unknown): [code: string, message: string] {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  switch (code) {
    case 'ENOENT':
    case 'ENOTDIR':
      return ['missing-file', 'no such file; correct the path'];
    case 'EACCES':
    case 'EPERM':
      return ['unreadable-file', 'the file may not be read; change its permissions'];
    case 'ELOOP':
      return ['unreadable-file', 'the symbolic links of the path go in a circle; correct them'];
    case 'ENAMETOOLONG':
      return ['missing-file', 'the path is too long; correct it'];
    case 'EISDIR':
      return ['directory', 'found a directory, expected a file; name the file in it'];
    default:
      return [
        'unreadable-file',
        `the file cannot be read${code && ` (${code})`}; see that it is there and whole`,
      ];
  }
}

function refusal(stats: Stats, largest: number): [code: string, message: string] | null {
  if (stats.isDirectory()) return ['directory', 'found a directory, expected a file; name the file in it'];
  // A pipe is fine: a shell hands over a computed document that way.
  if (!stats.isFile() && !stats.isFIFO()) {
    return ['not-a-file', 'found a device or socket, expected a file; correct the path'];
  }
  if (stats.size > largest) {
    return [
      'too-large',
      `found ${stats.size} bytes, expected a document of at most ${largest}; is it a log?`,
    ];
  }
  return null;
}

function refuse(file: string, code: string, message: string): InputError {
  return new InputError([{ file, line: null, column: null, code, message }]);
}
