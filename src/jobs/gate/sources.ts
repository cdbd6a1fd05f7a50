import { resolve } from 'node:path';
import { Readable } from 'node:stream';
import { fileHashes } from '../../documents/file-hashes.ts';
import type { Specification } from '../../documents/kinds.ts';
import { rememberingLibrary } from '../../documents/library.ts';
import { loadRun } from '../../documents/load.ts';
import type { LogSource } from '../../logs/bytes.ts';
import { echo } from '../../problem/echo.ts';
import type { Problem, ProblemList } from '../../problem/problem.ts';
import type { JudgedCriterion } from '../../result/criterion.ts';
import type { FoundResult, GateResult } from '../../result/gate.ts';
import { rejudge } from '../../verdict/rejudge.ts';
import { openTest } from '../analyze.ts';
import { type Documents, documentsOf } from '../documents-of.ts';
import { twins } from './document-checks.ts';
import { nameOf, type Repository } from './repository.ts';
import { type GateResultFile, readResult } from './stored-results.ts';
import { Unreadable } from './unreadable.ts';

/** What one run has to say, and from where. */
export interface EvidenceSource {
  readonly run: string;
  /** Of the run's file, or of the stored result where the run is not under the paths. */
  readonly path: string;
  /** `id@revision` of what was tested. */
  readonly constructions: ReadonlySet<string>;
  /** Id of the run that this one repeats. */
  readonly replaces: string | null;
  /** Every file that it rests on. */
  readonly files: readonly string[];
  /**
   * The run judged by each of some specifications: from stored results where they are current, else from its logs,
   * which are read once. Null where the run could not be read.
   */
  judge(specifications: readonly Specification[]): Promise<Judgements | null>;
}

/** By the name of the specification: the criteria, and the stored result that they were taken from. */
export type Judgements = ReadonlyMap<
  string,
  { readonly criteria: readonly JudgedCriterion[]; readonly result: string | null }
>;

/** The evidence of a repository before any of it is judged. */
export interface Sources {
  readonly sources: readonly EvidenceSource[];
  readonly results: readonly FoundResult[];
  /** Filled while evidence is taken. */
  readonly unreadable: GateResult['unreadable'];
}

/** A run that speaks of what is not there cannot be evidence of anything: the repository has to be mended first. */
const STOPS: ReadonlySet<string> = new Set(['unknown-construction', 'unknown-revision']);

/**
 * Where the evidence of a repository lies: its runs, and the stored results under the same paths. Runs that cannot be
 * read are told beside the others; two of one id, and one that names a construction or a revision which does not
 * exist, go to `problems`.
 */
export function sourcesOf(repository: Repository, version: string, problems: ProblemList): Sources {
  const unreadable = new Unreadable();
  const runs = new Map(repository.runs.map((path) => [resolve(path), path]));
  const context = { repository, runs, hashes: fileHashes(), version };
  const results = repository.results.flatMap(
    (path) => unreadable.take(path, () => readResult(path, context)) ?? [],
  );
  const library = rememberingLibrary();
  const read = (path: string) => documentsOf({ kind: 'run', path }, Readable.from([]), library);
  const ofRun = new Map<string | null, GateResultFile[]>();
  for (const result of results) {
    ofRun.set(result.runPath, [...(ofRun.get(result.runPath) ?? []), result]);
  }
  const sources: EvidenceSource[] = [];
  const names: { name: string; source: { path: string; locate: () => { line: number; column: number } } }[] =
    [];
  for (const path of repository.runs) {
    const stored = ofRun.get(path) ?? [];
    const current = stored.find(({ found, run }) => found.state === 'current' && run !== null);
    // Where a stored result is current nothing of the run has changed, so that it need not be read again.
    const documents =
      current === undefined
        ? unreadable.take(
            path,
            () => read(path),
            (all) => stop(all, problems),
          )
        : null;
    const known = documents ?? current;
    if (known === null || known === undefined) continue;
    const run = known.run ?? path;
    names.push({ name: run, source: { path, locate: () => loadRun({ path }).source.locate(['id']) } });
    sources.push(
      ofRunFile({
        run,
        path,
        stored,
        documents: () => documents ?? unreadable.take(path, () => read(path)),
        constructions: documents?.constructions.map(nameOf) ?? current!.constructions,
        replaces: documents?.replaces?.run ?? current?.replaces ?? null,
        files:
          documents === null
            ? [path, ...stored.flatMap(({ files }) => files)]
            : filesOf(path, documents, stored),
        unreadable,
      }),
    );
  }
  for (const problem of twins(names)) problems.add(problem);
  return {
    sources: [...sources, ...(ofRun.get(null) ?? []).map(ofResultAlone)],
    results: results.map(({ found }) => found),
    unreadable: unreadable.all,
  };
}

interface RunFile {
  readonly run: string;
  readonly path: string;
  readonly stored: readonly GateResultFile[];
  readonly documents: () => Documents | null;
  readonly constructions: readonly string[];
  readonly replaces: string | null;
  readonly files: readonly string[];
  readonly unreadable: Unreadable;
}

function ofRunFile({ stored, documents, unreadable, ...file }: RunFile): EvidenceSource {
  return {
    ...file,
    constructions: new Set(file.constructions),
    async judge(specifications) {
      let analyse: Awaited<ReturnType<typeof openTest>> | null = null;
      const judged = new Map<string, { criteria: readonly JudgedCriterion[]; result: string | null }>();
      for (const specification of specifications) {
        const name = nameOf(specification);
        const kept = stored.find((one) => one.specification === name && one.found.state === 'current');
        if (kept !== undefined) {
          judged.set(name, { criteria: honest(kept, specification), result: kept.path });
          continue;
        }
        const opened = documents();
        if (opened === null) return null;
        analyse ??= await unreadable.wait(file.path, () => openTest(opened));
        if (analyse === null) return null;
        judged.set(name, { criteria: analyse(specification).criteria, result: null });
      }
      return judged;
    },
  };
}

/** A stored result whose run is not under the paths: as it stands where it is current, else not valid. */
function ofResultAlone(stored: GateResultFile): EvidenceSource {
  const { path, run, constructions, replaces, files, found } = stored;
  return {
    run: run ?? path,
    path,
    constructions: new Set(constructions),
    replaces,
    files,
    async judge(specifications) {
      const own = specifications.filter((specification) => nameOf(specification) === stored.specification);
      const why = `the stored result is stale (${found.why}), and its run is not here`;
      return new Map(
        own.map((specification) => {
          const criteria =
            found.state === 'current'
              ? honest(stored, specification)
              : stored.criteria.map((criterion) => ({ ...criterion, verdict: 'invalid' as const, why }));
          return [nameOf(specification), { criteria, result: path }];
        }),
      );
    },
  };
}

/** The criteria of a stored result; one whose verdict its own numbers contradict is evidence of nothing. */
function honest({ criteria }: GateResultFile, specification: Specification): JudgedCriterion[] {
  return criteria.map((stored) => {
    const criterion = specification.criteria.find(({ id }) => id === stored.id);
    const { verdict } = criterion === undefined ? stored : rejudge(criterion, stored);
    if (verdict === stored.verdict) return stored;
    const why = `the stored verdict is ${echo(stored.verdict)}, and the numbers beside it say ${verdict}: "tirelab verify" shows what was changed`;
    return { ...stored, verdict: 'invalid', why };
  });
}

function filesOf(path: string, documents: Documents, stored: readonly GateResultFile[]): string[] {
  const { specimens, mountings, checks, amendments, inspections, events, logs, inputs } = documents;
  const tables = [
    specimens,
    mountings,
    checks,
    amendments,
    inspections,
    events,
    ...logs.map(({ source }) => source),
  ];
  return [
    path,
    ...inputs.map((input) => input.path),
    ...tables.flatMap((table) => (table === null ? [] : pathOf(table))),
    ...stored.map((result) => result.path),
  ];
}

function pathOf(source: LogSource): string[] {
  if (typeof source === 'string') return [source];
  return 'path' in source ? [source.path] : [];
}

/** Problems of a run that stop the gate; true where it has some. */
function stop(found: readonly Problem[], problems: ProblemList): boolean {
  if (!found.some(({ code }) => STOPS.has(code))) return false;
  for (const problem of found) problems.add(problem);
  return true;
}
