import { InputError, type Problem } from '../problem/problem.ts';
import { beginOfDay } from '../quantity/calendar.ts';
import type { ArchivedFile, ArchivedPart } from '../result/archive.ts';
import { isMap, type Json, loadJson } from './stored-result.ts';

/** What a manifest has that can be held against the shelf and the disk. */
export interface StoredManifest {
  readonly path: string;
  readonly until: string;
  readonly files: readonly ArchivedFile[];
  readonly parts: readonly ArchivedPart[];
}

/** The schema of a file of JSON; null where it names none. @throws InputError where it is no JSON */
export function schemaOf(path: string): string | null {
  const document = loadJson(path, 'a result or an archive manifest');
  return isMap(document) && typeof document.schema === 'string' ? document.schema : null;
}

/**
 * Reads a manifest that `tirelab archive` wrote.
 *
 * @throws InputError with every entry that is not as it was written: an archive is not to be trusted in parts.
 */
export function loadManifest(path: string): StoredManifest {
  const document = loadJson(path, 'the manifest that "tirelab archive" wrote');
  const problems: Problem[] = [];
  const bad = (where: string, expected: string) => {
    const message = `$.${where}: expected ${expected}; has the manifest been edited?`;
    problems.push({ file: path, line: null, column: null, code: 'bad-manifest', message });
  };
  const map = isMap(document) ? document : {};
  const retention = isMap(map.retention) ? map.retention : {};
  const until = day(retention.until);
  if (until === null) bad('retention.until', 'a day such as 2036-03-31');
  const files = entries(map.files, 'files', bad).flatMap((entry, i): ArchivedFile[] => {
    const { role, path: at, sha256, bytes } = entry;
    const isGood =
      typeof role === 'string' &&
      typeof at === 'string' &&
      typeof sha256 === 'string' &&
      /^[0-9a-f]{64}$/u.test(sha256) &&
      typeof bytes === 'number';
    if (isGood) return [{ role, path: at, sha256, bytes }];
    bad(`files[${i}]`, 'role, path, SHA-256 and bytes');
    return [];
  });
  const parts = entries(map.parts, 'parts', bad).flatMap((entry, i): ArchivedPart[] => {
    const { specimen, part, place } = entry;
    const end = day(entry.until);
    if (
      typeof specimen === 'string' &&
      typeof part === 'string' &&
      typeof place === 'string' &&
      end !== null
    ) {
      return [{ specimen, part, place, until: end }];
    }
    bad(`parts[${i}]`, 'specimen, part, place and a day');
    return [];
  });
  if (until === null || problems.length > 0) throw new InputError(problems.slice(0, 20));
  return { path, until, files, parts };
}

type Entry = { readonly [key: string]: Json };

function entries(
  value: Json | undefined,
  name: string,
  bad: (where: string, expected: string) => void,
): readonly Entry[] {
  if (!Array.isArray(value)) {
    bad(name, 'a list');
    return [];
  }
  return value.map((entry) => (isMap(entry) ? entry : {}));
}

function day(value: Json | undefined): string | null {
  return typeof value === 'string' && beginOfDay(value) !== null ? value : null;
}
