import { changesSince, realPath } from '../../documents/git.ts';
import type { Construction } from '../../documents/kinds.ts';
import { constructionAt } from '../../documents/load.ts';
import { quote } from '../../problem/echo.ts';
import { InputError, type Problem } from '../../problem/problem.ts';
import { nameOf, type Repository } from './repository.ts';

/**
 * Sees that every revision which was released at a commit is still what it was: whatever changes the tyre makes a new
 * revision. Its status may go on to `withdrawn`; title and comments are for people and may be mended.
 *
 * @throws InputError where the paths are in no repository or it has no such commit.
 */
export function checkReleased(
  paths: readonly string[],
  base: string,
  { constructions, constructionNamed }: Repository,
): Problem[] {
  const { changed, removed, contentAt } = changesSince(paths, base);
  const atBase = (path: string): Construction | null => {
    const bytes = contentAt(path);
    if (bytes === null) return null;
    try {
      return constructionAt(bytes, path);
    } catch (error) {
      if (error instanceof InputError) return null;
      throw error;
    }
  };
  const here = new Map(
    constructions.map(({ source }) => [realPath(source.path) ?? source.path, source.path]),
  );
  const suspects = [
    ...[...changed].filter((path) => here.has(path)),
    ...[...removed].filter((path) => /\.ya?ml$/iu.test(path)),
  ];
  return suspects.flatMap((path) => {
    const before = atBase(path);
    if (before === null || before.status !== 'released') return [];
    const now = constructionNamed.get(nameOf(before));
    const released = `${quote(nameOf(before))}, which was released at ${quote(base)}`;
    if (now !== undefined) return changesOf(before, now, released);
    const message = `found nothing of ${released}; put its file back: what changes the tyre is a revision in a file of its own`;
    return [{ file: here.get(path) ?? path, line: null, column: null, code: 'released-removed', message }];
  });
}

function changesOf(before: Construction, now: Construction, released: string): Problem[] {
  const { source } = now;
  const problem = (path: readonly string[], was: string, is: string): Problem => {
    const message = `found ${is} in ${released} with ${was}; give the change a new revision`;
    return { file: source.path, ...source.locate(path), code: 'released-changed', message };
  };
  const list = (names: readonly string[] = []) => names.join(', ');
  const kept: readonly (readonly [string, string | null, string | null])[] = [
    ['category', before.category, now.category],
    ['size', before.size, now.size],
    ['parent', before.parent, now.parent],
    ['declared', list(before.declared), list(now.declared)],
    ['consequences', list(before.consequences), list(now.consequences)],
  ];
  const say = (value: string | null | undefined) => (value ? quote(value) : 'nothing');
  const factors = [...new Set([...Object.keys(before.factors), ...Object.keys(now.factors)])];
  return [
    ...(now.status === 'released' || now.status === 'withdrawn'
      ? []
      : [problem(['status'], 'status "released"', `status ${say(now.status)}`)]),
    ...kept.flatMap(([key, was, is]) =>
      was === is ? [] : [problem([key], `${key} ${say(was)}`, `${key} ${say(is)}`)],
    ),
    ...factors.flatMap((factor) => {
      const [was, is] = [before.factors[factor], now.factors[factor]];
      const path = ['factors', ...factor.split('.')];
      return was === is ? [] : [problem(path, `${factor} ${say(was)}`, `${factor} ${say(is)}`)];
    }),
  ];
}
