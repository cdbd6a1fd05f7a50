import { Readable } from 'node:stream';
import { ESTIMATOR_NAMES } from '../documents/estimator-names.ts';
import { isMap, type Json, loadStoredResult, type StoredResult } from '../documents/stored-result.ts';
import { InputError } from '../problem/problem.ts';
import type { ImpactResult } from '../result/analysis.ts';
import type { EnduranceResult } from '../result/endurance.ts';
import type { Verification } from '../result/verification.ts';
import { analyze } from './analyze.ts';
import type { Request } from './documents-of.ts';

/** More differences than these are counted by nobody. */
const MOST = 50;

/** Keys that say who computed and from where; everything else must come out again. */
const NOT_COMPARED: ReadonlySet<string> = new Set(['inputs', 'tool', 'estimates']);

/**
 * Recomputes a stored result from the inputs it names and says whether it follows from them: the inputs still have
 * their hashes, and every number, word and verdict comes out again to the last digit.
 *
 * @param documentOf the JSON of a result, as `analyze --json` writes it.
 * @throws InputError where the result or one of its inputs cannot be read.
 */
export async function verify(
  path: string,
  documentOf: (result: ImpactResult | EnduranceResult) => Json,
): Promise<Verification> {
  const stored = loadStoredResult(path);
  const request = requestOf(stored);
  // The stored result may have been asked for further estimators: all of them are recomputed, and those it has are held
  // against them; what comes out without being asked must be in it.
  const usual = documentOf(await analyze(request, Readable.from([])));
  const full =
    stored.document.kind === 'impact'
      ? documentOf(await analyze(request, Readable.from([]), ESTIMATOR_NAMES))
      : usual;
  if (!isMap(usual) || !isMap(full)) throw new Error('a result is a map');
  const changed = changedInputs(stored, usual);
  const differences: { at: string; stored: string; recomputed: string }[] = [];
  for (const key of new Set([...Object.keys(stored.document), ...Object.keys(usual)])) {
    if (!NOT_COMPARED.has(key)) compare(`$.${key}`, stored.document[key], usual[key], differences);
  }
  compareEstimates(stored.document.estimates, usual.estimates, full.estimates, differences);
  return {
    result: path,
    follows: changed.length === 0 && differences.length === 0,
    changed,
    differences: differences.slice(0, MOST),
  };
}

function requestOf({ path, inputs }: StoredResult): Request {
  const of = (role: string) => inputs.filter((input) => input.role === role).map((input) => input.path);
  const [run] = of('run');
  if (run !== undefined) return { kind: 'run', path: run };
  const [protocol] = of('protocol');
  const logs = of('log');
  if (protocol === undefined || logs.length === 0 || logs.includes('-')) {
    const message = logs.includes('-')
      ? 'the log came from standard input, which is gone: nothing can be recomputed'
      : 'the result names neither a run nor a protocol with its logs: nothing can be recomputed';
    throw new InputError([{ file: path, line: null, column: null, code: 'not-recomputable', message }]);
  }
  return {
    kind: 'files',
    protocol,
    rig: of('rig')[0] ?? null,
    constructions: of('construction'),
    specification: of('specification')[0] ?? null,
    specimens: of('specimens')[0] ?? null,
    logs,
  };
}

function changedInputs({ inputs }: StoredResult, now: { readonly [key: string]: Json }) {
  const present = new Map(
    (Array.isArray(now.inputs) ? now.inputs : [])
      .filter(isMap)
      .map((input) => [`${input.role}\n${input.path}`, input.sha256] as const),
  );
  return inputs
    .filter(({ role, path, sha256 }) => present.get(`${role}\n${path}`) !== sha256)
    .map(({ role, path }) => ({ role, path }));
}

type Differences = { at: string; stored: string; recomputed: string }[];

function compare(at: string, stored: Json | undefined, now: Json | undefined, into: Differences): void {
  if (into.length >= MOST || stored === now) return;
  if (Array.isArray(stored) && Array.isArray(now)) {
    if (stored.length === now.length) {
      for (const [i, item] of stored.entries()) compare(`${at}[${i}]`, item, now[i], into);
      return;
    }
  } else if (isMap(stored) && isMap(now)) {
    for (const key of new Set([...Object.keys(stored), ...Object.keys(now)])) {
      compare(`${at}.${key}`, stored[key], now[key], into);
    }
    return;
  }
  into.push({ at, stored: shortOf(stored), recomputed: shortOf(now) });
}

function compareEstimates(
  stored: Json | undefined,
  usual: Json | undefined,
  full: Json | undefined,
  into: Differences,
): void {
  const entries = (list: Json | undefined) =>
    new Map((Array.isArray(list) ? list : []).filter(isMap).map((entry) => [identityOf(entry), entry]));
  const [own, must, may] = [entries(stored), entries(usual), entries(full)];
  for (const [identity, entry] of own) compare(`$.estimates(${identity})`, entry, may.get(identity), into);
  for (const [identity, entry] of must) {
    if (!own.has(identity)) compare(`$.estimates(${identity})`, undefined, entry, into);
  }
}

function identityOf(entry: { readonly [key: string]: Json }): string {
  const { quantity, method, probability, variant, interval, distribution, sample, construction } = entry;
  const by = isMap(interval) ? interval.method : null;
  return [quantity, method, distribution, probability, variant, sample, construction, by]
    .filter((part) => part !== undefined && part !== null)
    .join(', ');
}

function shortOf(value: Json | undefined): string {
  const text = value === undefined ? 'nothing' : JSON.stringify(value);
  return text.length > 80 ? `${text.slice(0, 79)}…` : text;
}
