import { createHash } from 'node:crypto';
import { readFileSync, statSync } from 'node:fs';
import { InputError } from '../problem/problem.ts';
import type { Photo } from '../result/report.ts';
import type { Whereabouts } from './load.ts';
import { fileTrouble } from './read-file.ts';

/** A report stays one file that can be sent: a larger picture must be made smaller first. */
const LARGEST = 2 * 1024 * 1024;

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const JPEG = [0xff, 0xd8, 0xff];

/**
 * Reads a picture for a report. What it is, its first bytes say, never its name.
 *
 * @throws InputError for a file that cannot be read, is larger than 2 MiB, or is neither PNG nor JPEG.
 */
export function readPhoto({ path, named = path }: Whereabouts, caption: string): Photo {
  const refuse = (code: string, message: string): InputError =>
    new InputError([{ file: named, line: null, column: null, code, message }]);
  const bytes = bytesOf(path, refuse);
  const type = typeOf(bytes);
  if (type === null) {
    throw refuse(
      'not-a-picture',
      'found neither PNG nor JPEG by its first bytes, expected one of them; convert it',
    );
  }
  return {
    path: named,
    caption,
    type,
    base64: bytes.toString('base64'),
    sha256: createHash('sha256').update(bytes).digest('hex'),
    bytes: bytes.length,
  };
}

function bytesOf(path: string, refuse: (code: string, message: string) => InputError): Buffer {
  try {
    const stats = statSync(path);
    if (!stats.isFile())
      throw refuse('not-a-file', 'found no regular file, expected a picture; correct the path');
    if (stats.size > LARGEST) {
      throw refuse(
        'too-large',
        `found ${stats.size} bytes, expected a picture of at most ${LARGEST}; make it smaller, 1600 pixels across are enough`,
      );
    }
    return readFileSync(path);
  } catch (error) {
    if (error instanceof InputError) throw error;
    throw refuse(...fileTrouble(error));
  }
}

function typeOf(bytes: Uint8Array): Photo['type'] | null {
  const begins = (signature: readonly number[]) => signature.every((byte, i) => bytes[i] === byte);
  if (begins(PNG)) return 'image/png';
  return begins(JPEG) ? 'image/jpeg' : null;
}
