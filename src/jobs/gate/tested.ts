import type { Specimen } from '../../logs/register.ts';
import { readSpecimens } from '../../logs/specimens.ts';
import { quote } from '../../problem/echo.ts';
import { InputError, type Problem } from '../../problem/problem.ts';
import type { Documents } from '../documents-of.ts';
import { nameOf, type Repository } from './repository.ts';

/** What a run tested. */
export interface Tested {
  /** `id@revision`. */
  readonly constructions: readonly string[];
  /** Tyres of a revision that no file has. */
  readonly problems: readonly Problem[];
}

/**
 * The constructions that a run tested: those that it names, else the one that its table of specimens names. Tyres that
 * are registered under a revision which no file has, though the construction is there, are a problem: what was tested is
 * not known. Anything else that is wrong with the table is told when the run is judged.
 */
export async function testedBy(documents: Documents, repository: Repository): Promise<Tested> {
  const { specimens, constructions } = documents;
  const named = constructions.map(nameOf);
  if (specimens === null) return { constructions: named, problems: [] };
  try {
    const { specimens: rows } = await readSpecimens(specimens);
    return {
      constructions: named.length > 0 ? named : onlyOne(rows, repository),
      problems: unknownRevisions(rows, documents, repository),
    };
  } catch (error) {
    if (error instanceof InputError) return { constructions: named, problems: [] };
    throw error;
  }
}

/** The construction of all candidates, where there is one of that name and one only. */
function onlyOne(rows: readonly Specimen[], { constructions }: Repository): string[] {
  const candidates = rows.filter(({ role }) => role === null || role === 'candidate');
  const [name, ...others] = new Set(candidates.map(({ construction }) => construction));
  if (others.length > 0) return [];
  const meant = constructions.filter((one) => name === one.id || name === nameOf(one)).map(nameOf);
  return meant.length === 1 ? meant : [];
}

function unknownRevisions(
  rows: readonly Specimen[],
  { constructions }: Documents,
  repository: Repository,
): Problem[] {
  const all = [...repository.constructions, ...constructions];
  const names = new Set(all.map(nameOf));
  const ids = new Set(all.map(({ id }) => id));
  return rows.flatMap(({ file, line, construction, constructionColumn }) => {
    if (construction === null || names.has(construction) || ids.has(construction)) return [];
    const id = construction.slice(0, construction.lastIndexOf('@'));
    if (!ids.has(id)) return [];
    const here = new Set(all.filter((one) => one.id === id).map((one) => quote(one.revision)));
    const message = `found ${quote(construction)}, and ${quote(id)} is here as revision ${[...here].join(', ')} only; correct the row, or add the file of that revision`;
    return [{ file, line, column: constructionColumn ?? null, code: 'unknown-revision', message }];
  });
}
