import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { InputError } from '../problem/problem.ts';
import { fileTrouble } from './read-file.ts';
import { loadStoredResult, type StoredResult } from './stored-result.ts';

/** Stands in every stored result, near its beginning. */
const MARK = /"schema"\s*:\s*"tirelab\.result\/1"/u;

/**
 * The stored results under some paths: a file that is named must be one, in a folder those that say they are, in the
 * order of their paths.
 *
 * @throws InputError for a path that is not there, or a named file that is no result
 */
export function findResults(paths: readonly string[]): StoredResult[] {
  return paths.flatMap((path) => {
    try {
      if (!statSync(path).isDirectory()) return [loadStoredResult(path)];
      return filesUnder(path)
        .filter((file) => MARK.test(readFileSync(file, 'utf8').slice(0, 4096)))
        .map(loadStoredResult);
    } catch (error) {
      if (error instanceof InputError) throw error;
      const [code, message] = fileTrouble(error);
      throw new InputError([{ file: path, line: null, column: null, code, message }]);
    }
  });
}

function filesUnder(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.json') && !/(?:^|[\\/])(?:\.|node_modules[\\/])/u.test(name))
    .map((name) => join(folder, name))
    .filter((file) => statSync(file).isFile())
    .sort();
}
