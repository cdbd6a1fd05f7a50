import { type FoundDocument, findDocuments } from '../../documents/find.ts';
import type { Construction, Specification, Waiver } from '../../documents/kinds.ts';
import { loadConstruction, loadDocument, loadSpecification, loadWaiver } from '../../documents/load.ts';
import { InputError, type ProblemList } from '../../problem/problem.ts';

/** The documents of a repository that a gate looks at. */
export interface Repository {
  readonly constructions: readonly Construction[];
  readonly specifications: readonly Specification[];
  /** The same by `id@revision` and `id@version`. */
  readonly constructionNamed: ReadonlyMap<string, Construction>;
  readonly specificationNamed: ReadonlyMap<string, Specification>;
  readonly waivers: readonly Waiver[];
  /** The versions of each protocol, by its id. */
  readonly protocols: ReadonlyMap<string, ReadonlySet<string>>;
  /** Paths of runs and of stored results: found only, for one that cannot be read is no reason to judge nothing. */
  readonly runs: readonly string[];
  readonly results: readonly string[];
}

/** `id@revision` or `id@version`. */
export function nameOf(document: Construction | Specification): string {
  return `${document.id}@${'revision' in document ? document.revision : document.version}`;
}

/**
 * Finds what a gate looks at under some paths and reads it, but for runs and results; what is wrong goes to `problems`.
 *
 * @throws InputError for a path that is not there.
 */
export function repositoryOf(paths: readonly string[], problems: ProblemList): Repository {
  const found = findDocuments(paths);
  const pathsOf = (kind: FoundDocument['kind']) =>
    found.filter((document) => document.kind === kind).map(({ path }) => path);
  const read = <Kind>(kind: FoundDocument['kind'], load: (where: { path: string }) => Kind): Kind[] =>
    pathsOf(kind).flatMap((path) => {
      try {
        return [load({ path })];
      } catch (error) {
        if (!(error instanceof InputError)) throw error;
        for (const problem of error.problems) problems.add(problem);
        return [];
      }
    });
  const constructions = read('construction', loadConstruction);
  const specifications = read('specification', loadSpecification);
  return {
    constructions,
    specifications,
    constructionNamed: new Map(constructions.map((one) => [nameOf(one), one])),
    specificationNamed: new Map(specifications.map((one) => [nameOf(one), one])),
    waivers: read('waiver', loadWaiver),
    protocols: versionsOf(pathsOf('protocol')),
    runs: pathsOf('run'),
    results: pathsOf('result'),
  };
}

/** Ids and versions alone: a protocol that is wrong is told by the runs that follow it. */
function versionsOf(paths: readonly string[]): Map<string, Set<string>> {
  const versions = new Map<string, Set<string>>();
  for (const path of paths) {
    try {
      const { id, version } = loadDocument({ path }, 'protocol').value;
      if (typeof id !== 'string' || typeof version !== 'string') continue;
      versions.set(id, (versions.get(id) ?? new Set()).add(version));
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
    }
  }
  return versions;
}
