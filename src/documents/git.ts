import { execFileSync } from 'node:child_process';
import { realpathSync, statSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import { quote } from '../problem/echo.ts';
import { InputError } from '../problem/problem.ts';

/** What became of the files of a repository since a commit; paths are real and absolute. */
export interface ChangesSince {
  /** Changed or new, committed or not. */
  readonly changed: ReadonlySet<string>;
  /** There at the commit, and no longer. */
  readonly removed: ReadonlySet<string>;
  /** The bytes of a file at the commit; null where it was not there. */
  contentAt(path: string): Uint8Array | null;
}

/** A commit may hold a large document; beyond this it is none. */
const LARGEST = 16 * 1024 * 1024;

/**
 * Asks git what changed in the repository around some paths since a commit: what is committed, what is not yet, and
 * what git does not know yet; ignored files are not asked for.
 *
 * @param paths files or folders of one repository.
 * @param reference a commit, branch or tag.
 * @throws InputError where the paths are in no repository, or git knows no such commit.
 */
export function changesSince(paths: readonly string[], reference: string): ChangesSince {
  const folder = folderOf(paths[0]!);
  const refuse = (code: string, message: string) =>
    new InputError([{ file: paths[0]!, line: null, column: null, code, message }]);
  const git = (...args: string[]) =>
    execFileSync('git', ['-C', folder, ...args], {
      maxBuffer: 256 * 1024 * 1024,
      stdio: ['ignore', 'pipe', 'ignore'],
    });
  const root = answer(() => git('rev-parse', '--show-toplevel').toString('utf8').replace(/\n$/u, ''));
  if (root === null) {
    throw refuse('no-repository', 'lies in no git repository; name a path in one, or leave the commit out');
  }
  // A name that begins with a hyphen would be an option of git's.
  const commit = reference.startsWith('-')
    ? null
    : answer(() => git('rev-parse', '--verify', '--quiet', `${reference}^{commit}`).toString('utf8').trim());
  if (commit === null) {
    throw refuse(
      'unknown-commit',
      `its repository has no commit ${quote(reference)}; name one that it has, or fetch it first`,
    );
  }
  const listed = (...args: string[]) =>
    git(...args)
      .toString('utf8')
      .split('\0')
      .filter((name) => name !== '')
      .map((name) => join(root, name));
  const diff = ['diff', '--name-only', '--no-renames', '--no-ext-diff', '-z'];
  return {
    changed: new Set([
      ...listed(...diff, '--diff-filter=d', commit, '--', root),
      ...listed('ls-files', '--others', '--exclude-standard', '--full-name', '-z', '--', root),
    ]),
    removed: new Set(listed(...diff, '--diff-filter=D', commit, '--', root)),
    contentAt: (path) => {
      const name = relative(root, path).split(sep).join('/');
      return answer(() => {
        const bytes = git('cat-file', 'blob', `${commit}:${name}`);
        return bytes.length > LARGEST ? null : bytes;
      });
    },
  };
}

/** A path as git and the sets of changes have it: real and absolute; null where there is nothing. */
export function realPath(path: string): string | null {
  return answer(() => realpathSync(path));
}

function folderOf(path: string): string {
  const real = realpathSync(path);
  return statSync(real).isDirectory() ? real : dirname(real);
}

function answer<Value>(ask: () => Value): Value | null {
  try {
    return ask();
  } catch {
    return null;
  }
}
