import { fileHashes } from '../documents/file-hashes.ts';
import { isMap, type Json, loadStoredResult } from '../documents/stored-result.ts';
import { quote } from '../problem/echo.ts';
import { InputError } from '../problem/problem.ts';
import type { ExportedCriterion, ExportedEstimate, ExportedResult } from '../result/export.ts';

export interface ExportRequest {
  readonly path: string;
  /** How the item is called outside. */
  readonly as: string;
  /** Which construction of a session; null where there is one. */
  readonly construction: string | null;
  /** Whether limits and verdicts go out as well. */
  readonly withCriteria: boolean;
}

type Entry = { readonly [key: string]: Json };

/**
 * What of a stored result may leave the house: method, numbers and departures by code. Everything is copied key by key
 * from a list; names of constructions, specimens, batches, runs, operators and files, factors, notes and reasons are
 * not on it, so that a key which a result gains later stays inside until somebody lists it.
 *
 * @throws InputError where the file is no result, or has several constructions and none was named: results of one
 * customer are not another's.
 */
export function exportResult({ path, as, construction, withCriteria }: ExportRequest): ExportedResult {
  const { document } = loadStoredResult(path);
  const isOf = chooser(path, document, construction);
  const protocol = mapAt(document, 'protocol');
  const energy = document.kind === 'impact' ? mapAt(document, 'energy') : null;
  const criteria = listAt(document, 'criteria').filter(isOf);
  return {
    item: as,
    source: { sha256: fileHashes().of(path)?.sha256 ?? '' },
    kind: text(document.kind),
    protocol: {
      id: text(protocol.id),
      version: text(protocol.version),
      method: typeof protocol.method === 'string' ? protocol.method : null,
    },
    energy: energy && { definition: text(energy.definition), gravity: number(energy.gravity) },
    conformance: {
      status: text(mapAt(document, 'conformance').status),
      deviations: byCode(listAt(mapAt(document, 'conformance'), 'deviations')),
    },
    sample: sampleOf(document, isOf),
    estimates: listAt(document, 'estimates').filter(isOf).map(estimateOf),
    criteria: withCriteria ? criteria.map(criterionOf) : null,
    verdict: withCriteria ? verdictOf(document, isOf) : null,
  };
}

/** Whether an entry of a result is of the construction that goes out; entries without a name are of the only one. */
function chooser(path: string, document: Entry, asked: string | null): (entry: Entry) => boolean {
  const samples = listAt(document, 'samples').filter(({ role }) => role !== 'reference');
  const refuse = (code: string, message: string) =>
    new InputError([{ file: path, line: null, column: null, code, message }]);
  const names = [...new Set(samples.flatMap(({ construction }) => construction ?? []))].map(String);
  const only = listAt(document, 'constructions').map(({ id, revision }) => `${text(id)}@${text(revision)}`);
  if (names.length < 2 && samples.length < 2) {
    if (asked !== null && !only.some((name) => isNamed(asked, name))) {
      throw refuse(
        'unknown-construction',
        `found no construction ${quote(asked)} in the result; correct the name`,
      );
    }
    return () => true;
  }
  if (asked === null) {
    const listed = names.map((name) => quote(name)).join(', ');
    throw refuse(
      'several-constructions',
      `speaks of ${listed}; name the one that goes out with --construction`,
    );
  }
  if (!names.some((name) => isNamed(asked, name))) {
    throw refuse(
      'unknown-construction',
      `found no construction ${quote(asked)} in the result; correct the name`,
    );
  }
  return ({ construction }) => typeof construction === 'string' && isNamed(asked, construction);
}

/** `C-114` names `C-114@2` too. */
function isNamed(asked: string, name: string): boolean {
  return name === asked || name.startsWith(`${asked}@`) || asked.startsWith(`${name}@`);
}

/** Departures by what they are: where and on which tyre they were is the house's. */
function byCode(deviations: readonly Entry[]): ExportedResult['conformance']['deviations'] {
  const counts = new Map<string, { code: string; severity: string; scope: string; count: number }>();
  for (const { code, severity, scope, count } of deviations) {
    const key = [code, severity, scope].join('\n');
    const known = counts.get(key) ?? {
      code: text(code),
      severity: text(severity),
      scope: text(scope),
      count: 0,
    };
    counts.set(key, { ...known, count: known.count + (number(count) ?? 1) });
  }
  return [...counts.values()];
}

function sampleOf(document: Entry, isOf: (entry: Entry) => boolean): ExportedResult['sample'] {
  const samples = listAt(document, 'samples').filter(isOf);
  const all = samples.length > 0 ? samples : [mapAt(document, 'sample')];
  const sum = (key: string) => all.reduce((total, entry) => total + (number(entry[key]) ?? 0), 0);
  return {
    specimens: sum('specimens'),
    drops: sum('drops'),
    validDrops: sum('validDrops'),
    failures: sum('failures'),
  };
}

function verdictOf(document: Entry, isOf: (entry: Entry) => boolean): string | null {
  const samples = listAt(document, 'samples').filter(isOf);
  const verdict = samples.length === 1 ? samples[0]!.verdict : document.verdict;
  return typeof verdict === 'string' ? verdict : null;
}

function estimateOf(entry: Entry): ExportedEstimate {
  const interval = isMap(entry.interval) ? entry.interval : null;
  return {
    quantity: text(entry.quantity),
    ...numbersAt(entry, 'probability', 'at'),
    ...(typeof entry.variant === 'string' ? { variant: entry.variant } : {}),
    method: text(entry.method),
    ...(typeof entry.distribution === 'string' ? { distribution: entry.distribution } : {}),
    unit: text(entry.unit),
    value: number(entry.value),
    standardError: number(entry.standardError),
    interval: interval && {
      level: number(interval.level) ?? 0,
      sides: interval.sides === 1 ? 1 : 2,
      lower: number(interval.lower),
      upper: number(interval.upper),
      method: text(interval.method),
    },
    specimens: number(entry.specimens) ?? 0,
    drops: number(entry.drops) ?? 0,
  };
}

function criterionOf(entry: Entry): ExportedCriterion {
  const limit = mapAt(entry, 'limit');
  const within = isMap(limit.within)
    ? { lower: number(limit.within.lower), upper: number(limit.within.upper) }
    : null;
  return {
    quantity: text(entry.quantity),
    ...numbersAt(entry, 'probability', 'at'),
    limit: {
      ...numbersAt(limit, 'atLeast', 'atMost'),
      ...(within ? { within } : {}),
      unit: text(limit.unit),
    },
    verdict: text(entry.verdict),
  };
}

/** Those of some keys that hold a number. */
function numbersAt(entry: Entry, ...keys: readonly string[]): { readonly [key: string]: number } {
  return Object.fromEntries(
    keys.flatMap((key) => (typeof entry[key] === 'number' ? [[key, entry[key]]] : [])),
  );
}

function mapAt(entry: Entry, key: string): Entry {
  const value = entry[key];
  return isMap(value) ? value : {};
}

function listAt(entry: Entry, key: string): Entry[] {
  const value = entry[key];
  return Array.isArray(value) ? value.filter(isMap) : [];
}

function text(value: Json | undefined): string {
  return typeof value === 'string' ? value : '';
}

function number(value: Json | undefined): number | null {
  return typeof value === 'number' ? value : null;
}
