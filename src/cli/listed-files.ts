import { readDocumentBytes } from '../documents/read-file.ts';
import { InputError } from '../problem/problem.ts';
import type { Shell } from './shell.ts';

/**
 * The names in a list of files: one a line, or ended by NUL bytes as `find -print0` writes them. Empty lines are passed
 * over.
 *
 * @param list a file, `-` for standard input, or nothing
 * @throws InputError where the list cannot be read or names nothing
 */
export async function listedFiles(shell: Shell, list: string | undefined): Promise<string[]> {
  if (list === undefined) return [];
  const bytes = list === '-' ? await wholeOf(shell.stdin) : readDocumentBytes(list, list, MOST_BYTES);
  const text = Buffer.from(bytes).toString('utf8');
  const names = text.split(text.includes('\0') ? '\0' : /\r?\n/u).filter((name) => name !== '');
  if (names.length === 0) {
    const message = 'found no file in the list, expected one name a line; an empty search finds nothing';
    throw new InputError([{ file: list, line: null, column: null, code: 'empty-list', message }]);
  }
  return names;
}

/** Far more names than a lab has runs. */
const MOST_BYTES = 64 * 1024 * 1024;

async function wholeOf(stream: AsyncIterable<Uint8Array>): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  for await (const chunk of stream) chunks.push(chunk);
  return Buffer.concat(chunks);
}
