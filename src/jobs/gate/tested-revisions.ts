import { readSpecimens } from '../../logs/specimens.ts';
import { quote } from '../../problem/echo.ts';
import { InputError, type Problem } from '../../problem/problem.ts';
import type { Documents } from '../documents-of.ts';
import { nameOf, type Repository } from './repository.ts';

/**
 * Tyres that a table of specimens registers under a revision which no file has, though the construction is there: what
 * was tested is not known. Anything else that is wrong with the table is told when the run is judged.
 */
export async function unknownRevisions(
  { specimens, constructions }: Documents,
  repository: Repository,
): Promise<Problem[]> {
  if (specimens === null) return [];
  const all = [...repository.constructions, ...constructions];
  const names = new Set(all.map(nameOf));
  const ids = new Set(all.map(({ id }) => id));
  try {
    const { specimens: rows } = await readSpecimens(specimens);
    return rows.flatMap(({ file, line, construction, constructionColumn }) => {
      if (construction === null || names.has(construction) || ids.has(construction)) return [];
      const id = construction.slice(0, construction.lastIndexOf('@'));
      if (!ids.has(id)) return [];
      const here = all.filter((one) => one.id === id).map((one) => quote(one.revision));
      const message = `found ${quote(construction)}, and ${quote(id)} is here as revision ${[...new Set(here)].join(', ')} only; correct the row, or add the file of that revision`;
      return [{ file, line, column: constructionColumn ?? null, code: 'unknown-revision', message }];
    });
  } catch (error) {
    if (error instanceof InputError) return [];
    throw error;
  }
}
