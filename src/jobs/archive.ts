import { join, relative, sep } from 'node:path';
import { fileHashes } from '../documents/file-hashes.ts';
import { isMap, type Json, loadStoredResult, type StoredResult } from '../documents/stored-result.ts';
import { type KeptPart, readKeptParts } from '../logs/kept-parts.ts';
import { readSpecimens } from '../logs/specimens.ts';
import { quote } from '../problem/echo.ts';
import { ProblemList } from '../problem/problem.ts';
import type { ArchivedFile, ArchiveManifest } from '../result/archive.ts';

export interface ArchiveRequest {
  /** Stored results. */
  readonly results: readonly string[];
  /** The last day on which the files must be there. */
  readonly until: string;
  /** The table of kept parts; null where none are kept. */
  readonly parts: string | null;
  /** The folder from which the manifest's paths start. */
  readonly folder: string;
}

/**
 * Draws up what an archive has to keep: the results, every file that they rest on with its hash, the parts on the
 * shelf, and the day until which all this must be there.
 *
 * @throws InputError where a result cannot be read, or where a file is not here or no longer what the result was made
 * from: what is archived must be what was judged. All in one go, with the problems of the table of parts.
 */
export async function archive(request: ArchiveRequest): Promise<ArchiveManifest> {
  const { until, folder } = request;
  const problems = new ProblemList(50);
  const hashes = fileHashes();
  const results = request.results.map(loadStoredResult);
  const from = (path: string) => relative(folder, path).split(sep).join('/');
  const files = new Map<string, ArchivedFile>();
  const keep = (role: string, path: string, sha256: string | null, of: string) => {
    const found = hashes.of(path);
    const refuse = (code: string, message: string) =>
      problems.add({ file: of, line: null, column: null, code, message });
    if (found === null) {
      refuse(
        'input-missing',
        `its ${role} ${quote(path, 200)} is not here; run this where the result was made`,
      );
    } else if (sha256 !== null && found.sha256 !== sha256) {
      const made = `its ${role} ${quote(path, 200)} is not what it was made from`;
      refuse('input-changed', `${made}; analyse it again, or put the file back`);
    } else files.set(from(path), { role, path: from(path), ...found });
  };
  for (const { path, inputs } of results) {
    keep('result', path, null, path);
    for (const input of inputs) keep(input.role, input.path, input.sha256, path);
  }
  const parts = request.parts === null ? [] : await partsOf(request.parts, results, problems);
  if (request.parts !== null) keep('kept parts', request.parts, null, request.parts);
  problems.throwIfAny();
  return {
    until,
    results: results.map((result) => summaryOf(result, from(result.path))),
    files: [...files.values()].toSorted((a, b) => (a.path < b.path ? -1 : 1)),
    parts: parts.map(({ specimen, part, place, until: end }) => ({
      specimen,
      part,
      place,
      until: end ?? until,
    })),
  };
}

/** The kept parts; a specimen that no result knows is one that nobody will find again by its result. */
async function partsOf(
  path: string,
  results: readonly StoredResult[],
  problems: ProblemList,
): Promise<KeptPart[]> {
  const { records } = await readKeptParts(path);
  const known = new Set<string>();
  for (const { document, inputs } of results) {
    for (const list of [document.path, document.lives]) {
      for (const entry of Array.isArray(list) ? list.filter(isMap) : []) {
        if (typeof entry.specimen === 'string') known.add(entry.specimen);
      }
    }
    for (const { role, path: table } of inputs) {
      if (role !== 'specimens') continue;
      for (const { specimen } of (await readSpecimens(table)).specimens) known.add(specimen);
    }
  }
  for (const { file, line, specimen } of records) {
    if (known.has(specimen)) continue;
    const message = `found the specimen ${quote(specimen)}, which none of the results knows; correct the row, or archive its result`;
    problems.add({ file, line, column: null, code: 'unknown-specimen', message });
  }
  return [...records];
}

function summaryOf({ document }: StoredResult, path: string): ArchiveManifest['results'][number] {
  const named = (entry: Json | undefined, key: 'version' | 'revision') =>
    isMap(entry) ? `${String(entry.id)}@${String(entry[key])}` : '';
  const constructions = Array.isArray(document.constructions) ? document.constructions : [];
  return {
    path,
    run: typeof document.run === 'string' ? document.run : null,
    protocol: named(document.protocol, 'version'),
    constructions: constructions.map((entry) => named(entry, 'revision')),
    verdict: typeof document.verdict === 'string' ? document.verdict : null,
  };
}

/** Where a file of a manifest lies, from the folder of the manifest. */
export function archivedAt(folder: string, path: string): string {
  return join(folder, ...path.split('/'));
}
