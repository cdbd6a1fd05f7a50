import { changesSince, realPath } from '../../documents/git.ts';

/** What changed since a commit, as a gate asks for it. */
export interface ChangedFiles {
  /** Whether one of these files has changed. */
  touch(paths: readonly string[]): boolean;
}

/**
 * The files that changed since a commit. A document or a result that is no longer there may have been anyone's
 * evidence, and what it said is gone with it: then everything counts as changed.
 *
 * @throws InputError where the paths are in no repository or it has no such commit.
 */
export function changedFiles(paths: readonly string[], reference: string): ChangedFiles {
  const { changed, removed } = changesSince(paths, reference);
  const everything = [...removed].some((path) => /\.(?:ya?ml|json)$/iu.test(path));
  const known = new Map<string, boolean>();
  return {
    touch: (files) =>
      everything ||
      files.some((file) => {
        const isKnown = known.get(file);
        if (isKnown !== undefined) return isKnown;
        const real = realPath(file);
        const isChanged = real !== null && changed.has(real);
        known.set(file, isChanged);
        return isChanged;
      }),
  };
}
