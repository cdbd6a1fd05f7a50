import { type FoundDocument, findDocuments } from '../../documents/find.ts';
import type { Construction, Specification } from '../../documents/kinds.ts';
import { loadConstruction, loadSpecification } from '../../documents/load.ts';
import { InputError, type Problem, ProblemList } from '../../problem/problem.ts';

/** The documents of a repository that a gate looks at. */
export interface Repository {
  readonly constructions: readonly Construction[];
  readonly specifications: readonly Specification[];
  readonly runs: readonly string[];
}

/**
 * Finds and reads constructions and specifications under some paths, and sees that they go together: every id and
 * revision stands once, parents exist and lead nowhere in a circle. Runs are found only: one that cannot be read is
 * no reason to judge nothing.
 *
 * @throws InputError with all problems of all documents.
 */
export function repositoryOf(paths: readonly string[]): Repository {
  const found = findDocuments(paths);
  const problems = new ProblemList(100);
  const of = <Kind>(kind: FoundDocument['kind'], load: (where: { path: string }) => Kind): Kind[] =>
    found
      .filter((document) => document.kind === kind)
      .flatMap(({ path }) => {
        try {
          return [load({ path })];
        } catch (error) {
          if (!(error instanceof InputError)) throw error;
          for (const problem of error.problems) problems.add(problem);
          return [];
        }
      });
  const constructions = of('construction', loadConstruction);
  const specifications = of('specification', loadSpecification);
  for (const problem of [...twins(constructions), ...twins(specifications), ...badParents(constructions)]) {
    problems.add(problem);
  }
  problems.throwIfAny();
  return {
    constructions,
    specifications,
    runs: found.filter(({ kind }) => kind === 'run').map(({ path }) => path),
  };
}

type Named = Construction | Specification;

/** `id@revision` or `id@version`. */
export function nameOf(document: Named): string {
  return `${document.id}@${'revision' in document ? document.revision : document.version}`;
}

function twins(documents: readonly Named[]): Problem[] {
  const first = new Map<string, Named>();
  return documents.flatMap((document) => {
    const name = nameOf(document);
    const twin = first.get(name);
    if (twin === undefined) {
      first.set(name, document);
      return [];
    }
    const { source } = document;
    const message = `found ${name} a second time (first in ${twin.source.path}), expected each once; give one another id or revision`;
    return [{ file: source.path, ...source.locate(['id']), code: 'duplicate-id', message }];
  });
}

function badParents(constructions: readonly Construction[]): Problem[] {
  const byName = new Map(constructions.map((construction) => [nameOf(construction), construction]));
  return constructions.flatMap((construction) => {
    const { parent, source } = construction;
    if (parent === null) return [];
    const at = { file: source.path, ...source.locate(['parent']) };
    if (!byName.has(parent)) {
      const message = `found the parent ${parent}, which is not among the constructions; add its file, or correct the name`;
      return [{ ...at, code: 'unknown-parent', message }];
    }
    const seen = new Set([nameOf(construction)]);
    for (let name: string | null = parent; name !== null; name = byName.get(name)?.parent ?? null) {
      if (seen.has(name)) {
        const message = `the parents of ${nameOf(construction)} go in a circle through ${name}; expected a line that ends`;
        return [{ ...at, code: 'circular-parent', message }];
      }
      seen.add(name);
    }
    return [];
  });
}
