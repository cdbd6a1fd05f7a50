import { resolve } from 'node:path';
import { Readable } from 'node:stream';
import { fileHashes } from '../../documents/file-hashes.ts';
import { type Library, rememberingLibrary } from '../../documents/library.ts';
import { loadRun } from '../../documents/load.ts';
import { echo } from '../../problem/echo.ts';
import { InputError, type Problem, type ProblemList } from '../../problem/problem.ts';
import type { FoundResult, GateResult } from '../../result/gate.ts';
import { documentsOf } from '../documents-of.ts';
import { twins } from './document-checks.ts';
import { type EvidenceSource, filesOf, ofResultAlone, ofRunFile } from './evidence-source.ts';
import type { Repository } from './repository.ts';
import { type GateResultFile, readResults } from './stored-results.ts';
import { testedBy } from './tested.ts';
import { Unreadable } from './unreadable.ts';

/** The evidence of a repository before any of it is judged. */
export interface Sources {
  readonly sources: readonly EvidenceSource[];
  readonly results: readonly FoundResult[];
  /** Filled further while evidence is taken. */
  readonly unreadable: GateResult['unreadable'];
}

/** A run that speaks of what is not there cannot be evidence of anything: the repository has to be mended first. */
const STOPS: ReadonlySet<string> = new Set(['unknown-construction', 'unknown-revision']);

/**
 * Where the evidence of a repository lies: its runs, and the stored results under the same paths. Runs that cannot be
 * read are told beside the others; two of one id, and one that names a construction or a revision which does not
 * exist, go to `problems`.
 */
export async function sourcesOf(
  repository: Repository,
  version: string,
  problems: ProblemList,
): Promise<Sources> {
  const unreadable = new Unreadable();
  const runs = new Map(repository.runs.map((path) => [resolve(path), path]));
  const context = { repository, runs, hashes: fileHashes(), version };
  const results = repository.results.flatMap(
    (path) => unreadable.take(path, () => readResults(path, context)) ?? [],
  );
  const ofRun = new Map<string | null, GateResultFile[]>();
  for (const result of results) {
    ofRun.set(result.runPath, [...(ofRun.get(result.runPath) ?? []), result]);
  }
  const library = rememberingLibrary();
  const sources: EvidenceSource[] = [];
  const names: Parameters<typeof twins>[0][number][] = [];
  for (const path of repository.runs) {
    const found = { path, stored: ofRun.get(path) ?? [], library, unreadable };
    const { run, source } = await sourceOf(found, repository, problems);
    if (run !== null) {
      names.push({ name: run, source: { path, locate: () => loadRun({ path }).source.locate(['id']) } });
    }
    if (source !== null) sources.push(source);
  }
  for (const problem of twins(names)) problems.add(problem);
  // A result whose run is here, but neither where it lay nor as it was, speaks of something that is no more.
  const here = new Set(names.map(({ name }) => name));
  const isOutrun = ({ run, runPath }: GateResultFile) => runPath === null && run !== null && here.has(run);
  return {
    sources: [
      ...sources,
      ...results.filter((one) => one.runPath === null && !isOutrun(one)).map(ofResultAlone),
    ],
    results: results.map((one) =>
      isOutrun(one) ? { ...one.found, state: 'stale', why: `run ${echo(one.run!)} has changed` } : one.found,
    ),
    unreadable: unreadable.all,
  };
}

interface FoundRun {
  readonly path: string;
  readonly stored: readonly GateResultFile[];
  readonly library: Library;
  readonly unreadable: Unreadable;
}

/** The id of a run, and what it can be judged from; null where it cannot be read. */
async function sourceOf(
  { path, stored, library, unreadable }: FoundRun,
  repository: Repository,
  problems: ProblemList,
): Promise<{ readonly run: string | null; readonly source: EvidenceSource | null }> {
  const read = () => documentsOf({ kind: 'run', path }, Readable.from([]), library);
  const current = stored.find(({ found, run }) => found.state === 'current' && run !== null);
  if (current !== undefined) {
    // Nothing of the run has changed, so that it need not be read again.
    const source = ofRunFile({
      run: current.run!,
      path,
      stored,
      documents: () => unreadable.take(path, read),
      constructions: current.constructions,
      replaces: current.replaces,
      files: [path, ...stored.flatMap(({ files }) => files)],
      unreadable,
    });
    return { run: current.run, source };
  }
  const documents = unreadable.take(path, read, (all) => stop(all, problems));
  if (documents === null) return { run: idOf(path), source: null };
  const tested = await testedBy(documents, repository);
  for (const problem of tested.problems) problems.add(problem);
  const source = ofRunFile({
    run: documents.run ?? path,
    path,
    stored,
    documents: () => documents,
    constructions: tested.constructions,
    replaces: documents.replaces?.run ?? null,
    files: filesOf(path, documents, stored),
    unreadable,
  });
  return { run: documents.run, source };
}

/** The id of a run of which something else is wrong: two of one id are told all the same. */
function idOf(path: string): string | null {
  try {
    return loadRun({ path }).id;
  } catch (error) {
    if (error instanceof InputError) return null;
    throw error;
  }
}

/** Problems of a run that stop the gate; true where it has some. */
function stop(found: readonly Problem[], problems: ProblemList): boolean {
  if (!found.some(({ code }) => STOPS.has(code))) return false;
  for (const problem of found) problems.add(problem);
  return true;
}
