import { closeSync, openSync, readdirSync, readSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { InputError } from '../problem/problem.ts';
import { fileTrouble } from './read-file.ts';

/** A document by the kind that its `format` names; a stored result by its `schema`. */
export interface FoundDocument {
  readonly kind: 'run' | 'construction' | 'specification' | 'protocol' | 'rig' | 'waiver' | 'result';
  readonly path: string;
}

/** Folders that hold no lab's documents and may hold many files. */
const SKIPPED: ReadonlySet<string> = new Set(['node_modules', 'dist']);

const FORMAT =
  /^format:\s*["']?tirelab\.(run|construction|specification|protocol|rig|waiver)\/1["']?\s*(?:#.*)?$/m;
/** The first key of what `analyze --json` and each line of `--ndjson` write; a first line may tell of a broken run. */
const SCHEMA = /^\s*\{\s*"schema"\s*:\s*"tirelab\.(result|problems)\/1"/;

/**
 * The documents under some paths, found by their `format`, whatever they are called; in the order of their paths, so
 * that a report is the same on every machine. Hidden folders are passed over; symbolic links are not followed.
 *
 * @throws InputError for a path that is not there or may not be read.
 */
export function findDocuments(paths: readonly string[]): FoundDocument[] {
  const files = new Set<string>();
  for (const path of paths) {
    try {
      if (statSync(path).isDirectory()) collect(path, files);
      else files.add(path);
    } catch (error) {
      const [code, message] = fileTrouble(error);
      throw new InputError([{ file: path, line: null, column: null, code, message }]);
    }
  }
  const buffer = Buffer.alloc(LONGEST_PREAMBLE);
  return [...files].sort(byCodeUnits).flatMap((path) => {
    const isJson = /\.(?:nd)?json$/i.test(path);
    const beginning = beginningOf(path, isJson ? buffer.subarray(0, 256) : buffer);
    const kind = (isJson ? SCHEMA : FORMAT).exec(beginning)?.[1];
    if (kind === undefined || (kind === 'problems' && !/\.ndjson$/i.test(path))) return [];
    return [{ kind: isJson ? 'result' : (kind as FoundDocument['kind']), path }];
  });
}

function collect(folder: string, files: Set<string>): void {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    if (entry.name.startsWith('.') || SKIPPED.has(entry.name)) continue;
    const path = join(folder, entry.name);
    if (entry.isDirectory()) collect(path, files);
    else if (entry.isFile() && /\.(?:ya?ml|json|ndjson)$/i.test(entry.name)) files.add(path);
  }
}

/** Enough of a file to find its `format` behind a comment. */
const LONGEST_PREAMBLE = 16 * 1024;

function beginningOf(path: string, buffer: Buffer): string {
  const file = openSync(path, 'r');
  try {
    return buffer.toString('utf8', 0, readSync(file, buffer, 0, buffer.length, 0));
  } finally {
    closeSync(file);
  }
}

/** The same order under any locale. */
function byCodeUnits(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
