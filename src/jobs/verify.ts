import { Readable } from 'node:stream';
import { ESTIMATOR_NAMES, type EstimatorName } from '../documents/estimator-names.ts';
import { isMap, type Json, loadStoredResult, type StoredResult } from '../documents/stored-result.ts';
import { InputError } from '../problem/problem.ts';
import type { ImpactResult } from '../result/analysis.ts';
import type { EnduranceResult } from '../result/endurance.ts';
import type { Verification } from '../result/verification.ts';
import { analyze, type Reading } from './analyze.ts';
import type { Request } from './documents-of.ts';

/** More differences than these are counted by nobody. */
const MOST = 50;

/** Keys that say who computed and from where; everything else must come out again. */
const NOT_COMPARED: ReadonlySet<string> = new Set(['inputs', 'tool']);

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
  const result = await analyze(requestOf(stored), Readable.from([]), askedFor(stored), intervalsOf(stored));
  const now = documentOf(result);
  if (!isMap(now)) throw new Error('a result is a map');
  const changed = changedInputs(stored, now);
  const differences: Differences = [];
  for (const key of new Set([...Object.keys(stored.document), ...Object.keys(now)])) {
    if (!NOT_COMPARED.has(key)) compare(`$.${key}`, stored.document[key], now[key], differences);
  }
  return {
    result: path,
    follows: changed.length === 0 && differences.length === 0,
    changed,
    differences: differences.slice(0, MOST),
  };
}

/** Profile intervals alone, where the result says that they were asked for. */
function intervalsOf({ document }: StoredResult): Reading {
  return document.intervals === 'profile-likelihood' ? { intervals: 'profile-likelihood' } : {};
}

/** The further estimators that a result has; those of its method by custom come out whether named or not. */
function askedFor({ document }: StoredResult): EstimatorName[] {
  const estimates = Array.isArray(document.estimates) ? document.estimates.filter(isMap) : [];
  const had = new Set(estimates.map(({ method }) => method));
  if (isMap(document.goodness)) had.add('goodness-of-fit');
  return ESTIMATOR_NAMES.filter((name) => had.has(name));
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

function shortOf(value: Json | undefined): string {
  const text = value === undefined ? 'nothing' : JSON.stringify(value);
  return text.length > 80 ? `${text.slice(0, 79)}…` : text;
}
