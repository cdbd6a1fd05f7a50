import { dirname, isAbsolute, join, normalize, relative, resolve } from 'node:path';
import type { FileHashes } from '../../documents/file-hashes.ts';
import {
  isMap,
  type Json,
  loadStoredResults,
  type StoredInput,
  type StoredResult,
} from '../../documents/stored-result.ts';
import { echo } from '../../problem/echo.ts';
import { counted } from '../../quantity/format.ts';
import type { JudgedCriterion } from '../../result/criterion.ts';
import type { FoundResult } from '../../result/gate.ts';
import type { Repository } from './repository.ts';

/** What a gate keeps of a stored result: all but its drops. */
export interface GateResultFile {
  readonly path: string;
  readonly run: string | null;
  /** The run of the repository that it is of; null where that is not under the paths. */
  readonly runPath: string | null;
  /** `id@version`; null where nothing was judged. */
  readonly specification: string | null;
  /** `id@revision`. */
  readonly constructions: readonly string[];
  readonly criteria: readonly JudgedCriterion[];
  /** Id of the run that this one repeats. */
  readonly replaces: string | null;
  /** Its inputs where they lie now. */
  readonly files: readonly string[];
  readonly found: FoundResult;
}

/** By what a stored result is held to be current. */
export interface ResultContext {
  readonly repository: Repository;
  /** Run files by their absolute paths, as the gate found them. */
  readonly runs: ReadonlyMap<string, string>;
  readonly hashes: FileHashes;
  /** Of tirelab itself: another version may give other numbers. */
  readonly version: string;
}

/**
 * Reads the stored results of a file and says whether each still is what its inputs give: the same version of tirelab, and the same
 * bytes of protocol, rig, constructions, specification, tables and logs. What is not here cannot be compared, and is
 * counted: logs may lie in an archive.
 *
 * @throws InputError where the file, or a line of it, is no result.
 */
export function readResults(path: string, context: ResultContext): GateResultFile[] {
  return loadStoredResults(path).map((stored) => gateResultOf(stored, path, context));
}

function gateResultOf(
  { path, inputs, document }: StoredResult,
  file: string,
  context: ResultContext,
): GateResultFile {
  const of = (role: string) => inputs.find((input) => input.role === role)?.path ?? null;
  const runPath = runOf(of('run'), inputs, context);
  const place = placeOf(of('run'), runPath);
  const specification = isMap(document.specification) ? named(document.specification, 'version') : null;
  const constructions = listOf(document.constructions).flatMap((entry) => named(entry, 'revision') ?? []);
  const { why, notCompared } = stalenessOf(inputs, place, context, {
    version: isMap(document.tool) ? document.tool.version : null,
    specification,
    constructions,
  });
  const run = typeof document.run === 'string' ? document.run : null;
  return {
    path,
    run,
    runPath,
    specification,
    constructions,
    criteria: listOf(document.criteria).flatMap(criterionOf),
    replaces:
      isMap(document.replaces) && typeof document.replaces.run === 'string' ? document.replaces.run : null,
    files: [file, ...inputs.map((input) => place(input.path))],
    found: { path, run, state: why === null ? 'current' : 'stale', why, notCompared },
  };
}

/** The run file where it lay when the result was made, else the one of the same bytes: a repository may be moved. */
function runOf(
  written: string | null,
  inputs: readonly StoredInput[],
  { runs, hashes }: ResultContext,
): string | null {
  if (written === null) return null;
  const there = runs.get(resolve(written));
  if (there !== undefined) return there;
  const { sha256 } = inputs.find(({ role }) => role === 'run')!;
  for (const path of runs.values()) if (hashes.of(path)?.sha256 === sha256) return path;
  return null;
}

/** Where an input lies now: as far from the run's file as it was when the result was made. */
function placeOf(written: string | null, runPath: string | null): (path: string) => string {
  if (written === null || runPath === null) return normalize;
  return (path) =>
    isAbsolute(path) === isAbsolute(written)
      ? join(dirname(runPath), relative(dirname(written), path))
      : path;
}

interface MadeFrom {
  readonly version: Json | undefined;
  readonly specification: string | null;
  readonly constructions: readonly string[];
}

function stalenessOf(
  inputs: readonly StoredInput[],
  place: (path: string) => string,
  { repository, hashes, version }: ResultContext,
  made: MadeFrom,
): { readonly why: string | null; readonly notCompared: number } {
  const reasons: string[] = [];
  if (made.version !== version) {
    const by = typeof made.version === 'string' ? echo(made.version) : 'an unknown version';
    reasons.push(`made by tirelab ${by}, and this is ${version}`);
  }
  const gone = made.constructions.filter((name) => !repository.constructionNamed.has(name));
  if (gone.length > 0)
    reasons.push(`no file has the construction ${gone.map((name) => echo(name)).join(', ')}`);
  let notCompared = 0;
  for (const { role, path, sha256 } of inputs) {
    // A specification counts by its name: the gate judges by the one that it found.
    const own =
      role === 'specification' ? repository.specificationNamed.get(made.specification ?? '') : undefined;
    const now = own?.source.sha256 ?? hashes.of(place(path))?.sha256 ?? null;
    if (now === null) notCompared += 1;
    else if (now !== sha256) reasons.push(`${role} ${echo(place(path), 200)} has changed`);
  }
  const rest = reasons.length - 3;
  const shown = rest > 0 ? [...reasons.slice(0, 3), `${counted(rest, 'more reason')}`] : reasons;
  return { why: reasons.length === 0 ? null : shown.join('; '), notCompared };
}

function named(entry: Json, key: 'version' | 'revision'): string | null {
  if (!isMap(entry)) return null;
  const { id, [key]: version } = entry;
  return typeof id === 'string' && typeof version === 'string' ? `${id}@${version}` : null;
}

function listOf(value: Json | undefined): readonly Json[] {
  return Array.isArray(value) ? value : [];
}

/** A criterion as far as judging needs it; null numbers where the file has something else. */
function criterionOf(entry: Json): JudgedCriterion[] {
  if (!isMap(entry) || typeof entry.id !== 'string' || typeof entry.verdict !== 'string') return [];
  const { bounds, basis } = entry;
  const number = (value: Json | undefined) => (typeof value === 'number' ? value : null);
  const text = (value: Json | undefined) => (typeof value === 'string' ? value : null);
  return [
    {
      ...(entry as unknown as JudgedCriterion),
      estimate: number(entry.estimate),
      standardError: number(entry.standardError),
      specimens: number(entry.specimens) ?? 0,
      bounds: isMap(bounds)
        ? { lower: number(bounds.lower), upper: number(bounds.upper) }
        : { lower: null, upper: null },
      basis: isMap(basis)
        ? { method: text(basis.method), interval: text(basis.interval) }
        : { method: null, interval: null },
      why: text(entry.why) ?? '',
      counted: entry.counted === true,
    },
  ];
}
