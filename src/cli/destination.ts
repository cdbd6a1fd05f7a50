import { randomBytes } from 'node:crypto';
import { existsSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { InputError } from '../problem/problem.ts';
import { type Shell, write } from './shell.ts';

/** Where a result goes: standard output, or the file of `-o`. */
export interface Destination {
  /** Writes the whole text, or nothing: a file appears complete or not at all. */
  put(text: string): Promise<void>;
}

/**
 * Opens the place a result will go to, before any work is done for it, so that a name that is taken costs nothing.
 *
 * @throws InputError where the file exists and `force` was not given, or its folder is not there.
 */
export function destination(shell: Shell, path: string | undefined, force: boolean): Destination {
  if (path === undefined || path === '-') return { put: (text) => write(shell.stdout, text) };
  if (existsSync(path) && !force) {
    throw outputError(path, 'output-exists', 'exists already; give another name, or --force to replace it');
  }
  if (!existsSync(dirname(path))) {
    throw outputError(path, 'output-folder', 'cannot be written: its folder does not exist');
  }
  return { put: (text) => putFile(shell, path, text) };
}

async function putFile(shell: Shell, path: string, text: string): Promise<void> {
  // Random, since two commands may write the same name at once; never seen in any result.
  const temporary = join(dirname(path), `.${basename(path)}.${randomBytes(4).toString('hex')}.tmp`);
  const forget = shell.onInterrupt(() => rmSync(temporary, { force: true }));
  try {
    writeFileSync(temporary, text, { flag: 'wx' });
    renameSync(temporary, path);
  } catch (error) {
    rmSync(temporary, { force: true });
    throw outputError(path, 'output-not-written', `cannot be written: ${(error as Error).message}`);
  } finally {
    forget();
  }
}

function outputError(path: string, code: string, message: string): InputError {
  return new InputError([{ file: path, line: null, column: null, code, message }]);
}
