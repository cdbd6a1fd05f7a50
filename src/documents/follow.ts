import { existsSync, realpathSync } from 'node:fs';
import { dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { quote } from '../problem/echo.ts';
import type { Problem } from '../problem/problem.ts';
import type { Source } from './kinds.ts';
import type { Whereabouts } from './load.ts';
import { fileTrouble } from './read-file.ts';
import type { Path } from './yaml-value.ts';

/** A file that a document names, or why it is not followed. */
export type Followed =
  | { readonly ok: true; readonly value: Required<Whereabouts> }
  | { readonly ok: false; readonly problem: Problem };

/**
 * Follows a path that stands in a document, relative to that document. `..` may lead anywhere, for the person who
 * wrote it sees it; a symbolic link is invisible, and one that leads out of the repository (the nearest folder
 * above with a `.git`; without one, the folder tree in which document and target stand) is refused. Links in the
 * path down to that tree do not matter: a temporary folder is one on many machines.
 *
 * @param source the document that has the path.
 * @param written the path as it stands there.
 * @param at where it stands, for the message.
 */
export function follow(source: Source, written: string, at: Path): Followed {
  const refuse = (code: string, message: string): Followed => ({
    ok: false,
    problem: { file: source.path, ...source.locate(at), code, message },
  });
  try {
    const folder = realpathSync(dirname(source.path));
    const target = resolve(folder, written);
    const root = commonFolder(repositoryOf(folder) ?? folder, target);
    const real = realpathSync(target);
    if (!isInside(root, real)) {
      const found = `${quote(written)} leads through a symbolic link out of the folder of the run`;
      return refuse('link-leads-out', `${found}; put the file there, or name the place itself`);
    }
    const named = isAbsolute(written) ? written : join(dirname(source.path), written);
    return { ok: true, value: { path: real, named } };
  } catch (error) {
    const [code, message] = fileTrouble(error);
    return refuse(code, `${quote(written)}: ${message}`);
  }
}

function repositoryOf(folder: string): string | null {
  for (let here = folder; ; here = dirname(here)) {
    if (existsSync(join(here, '.git'))) return here;
    if (here === dirname(here)) return null;
  }
}

/** The nearest folder at or above `folder` in which `target` stands. */
function commonFolder(folder: string, target: string): string {
  let here = folder;
  while (!isInside(here, target)) here = dirname(here);
  return here;
}

function isInside(folder: string, path: string): boolean {
  const way = relative(folder, path);
  return way === '' || !(way === '..' || way.startsWith(`..${sep}`) || isAbsolute(way));
}
