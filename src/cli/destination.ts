import { randomBytes } from 'node:crypto';
import { closeSync, existsSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { wasRead } from '../logs/read-files.ts';
import { InputError } from '../problem/problem.ts';
import { type Shell, write } from './shell.ts';

/** Where a result goes: standard output, or the file of `-o`. */
export interface Destination {
  /** Writes the whole text, or nothing: a file appears complete or not at all. */
  put(text: string): Promise<void>;
  /** Opens it for a result that is written as it comes. */
  open(): Outlet;
}

/** A result on its way: a file appears when it is done, complete, or not at all. */
export interface Outlet {
  write(text: string): Promise<void>;
  done(): void;
  /** Takes back what can be taken back. */
  undo(): void;
}

/**
 * Opens the place a result will go to, before any work is done for it, so that a name that is taken costs nothing.
 *
 * @throws InputError where the file exists and `force` was not given, or its folder is not there.
 */
export function destination(shell: Shell, path: string | undefined, force: boolean): Destination {
  const isStream = path === undefined || path === '-';
  if (!isStream && existsSync(path) && !force) {
    throw outputError(path, 'output-exists', 'exists already; give another name, or --force to replace it');
  }
  if (!isStream && !existsSync(dirname(path))) {
    throw outputError(path, 'output-folder', 'cannot be written: its folder does not exist');
  }
  const open = () => (isStream ? streamOutlet(shell) : fileOutlet(shell, path));
  return { put: (text) => putWhole(open(), text), open };
}

async function putWhole(outlet: Outlet, text: string): Promise<void> {
  try {
    await outlet.write(text);
    outlet.done();
  } catch (error) {
    outlet.undo();
    throw error;
  }
}

function streamOutlet(shell: Shell): Outlet {
  return { write: (text) => write(shell.stdout, text), done: () => {}, undo: () => {} };
}

function fileOutlet(shell: Shell, path: string): Outlet {
  // Random, since two commands may write the same name at once; never seen in any result.
  const temporary = join(dirname(path), `.${basename(path)}.${randomBytes(4).toString('hex')}.tmp`);
  const forget = shell.onInterrupt(() => rmSync(temporary, { force: true }));
  const tried = <Value>(act: () => Value): Value => {
    try {
      return act();
    } catch (error) {
      throw outputError(path, 'output-not-written', `cannot be written: ${(error as Error).message}`);
    }
  };
  const file = tried(() => openSync(temporary, 'wx'));
  return {
    async write(text) {
      const bytes = Buffer.from(text);
      for (let at = 0; at < bytes.length; ) at += tried(() => writeSync(file, bytes, at));
    },
    done() {
      closeSync(file);
      if (wasRead(path)) {
        throw outputError(
          path,
          'output-is-input',
          'is an input of this result and is never written to, even with --force; give another name',
        );
      }
      tried(() => renameSync(temporary, path));
      forget();
    },
    undo() {
      rmSync(temporary, { force: true });
      forget();
    },
  };
}

function outputError(path: string, code: string, message: string): InputError {
  return new InputError([{ file: path, line: null, column: null, code, message }]);
}
