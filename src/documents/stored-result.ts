import { readFileSync } from 'node:fs';
import { quote } from '../problem/echo.ts';
import { InputError } from '../problem/problem.ts';
import { fileTrouble } from './read-file.ts';

export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

/** A file that a result rests on, as it says. */
export interface StoredInput {
  readonly role: string;
  readonly path: string;
  readonly sha256: string;
}

/** A result as a file has it: what `analyze --json` wrote. */
export interface StoredResult {
  readonly path: string;
  /** What it rests on, as it says. */
  readonly inputs: readonly StoredInput[];
  readonly document: { readonly [key: string]: Json };
}

/**
 * Reads a stored result.
 *
 * @throws InputError where the file cannot be read, is no JSON, or is no result of this format
 */
export function loadStoredResult(path: string): StoredResult {
  return resultOf(loadJson(path, EXPECTED), path, null);
}

/**
 * Reads the results of a file: the one of `analyze --json`, or those of `analyze --ndjson`, a line each, which are
 * called by file and line. Lines of runs that could not be read are passed over.
 *
 * @throws InputError where the file cannot be read, or one of its lines is no result.
 */
export function loadStoredResults(path: string): StoredResult[] {
  if (!/\.ndjson$/iu.test(path)) return [loadStoredResult(path)];
  return readText(path)
    .split('\n')
    .flatMap((text, i) => {
      if (text.trim() === '') return [];
      const document = jsonOf(text, path, i + 1, EXPECTED);
      const isOfProblems = isMap(document) && document.schema === 'tirelab.problems/1';
      return isOfProblems ? [] : [resultOf(document, path, i + 1)];
    });
}

/**
 * Reads a file of JSON.
 *
 * @param expected what it should have been, for the message.
 * @throws InputError where the file cannot be read or is no JSON
 */
export function loadJson(path: string, expected: string): Json {
  return jsonOf(readText(path), path, null, expected);
}

const EXPECTED = 'the result that "tirelab analyze --json" wrote';

function readText(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    throw refusal(path, null, ...fileTrouble(error));
  }
}

function jsonOf(text: string, path: string, line: number | null, expected: string): Json {
  try {
    return JSON.parse(text);
  } catch {
    throw refusal(path, line, 'not-json', `found no JSON, expected ${expected}`);
  }
}

function resultOf(document: Json, path: string, line: number | null): StoredResult {
  if (!isMap(document) || document.schema !== 'tirelab.result/1') {
    const found =
      isMap(document) && typeof document.schema === 'string' ? quote(document.schema) : 'something else';
    throw refusal(path, line, 'not-a-result', `found ${found}, expected a result (schema tirelab.result/1)`);
  }
  const inputs = (Array.isArray(document.inputs) ? document.inputs : []).filter(isMap).flatMap((input) => {
    const { role, path: at, sha256 } = input;
    return typeof role === 'string' && typeof at === 'string' && typeof sha256 === 'string'
      ? [{ role, path: at, sha256 }]
      : [];
  });
  return { path: line === null ? path : `${path}:${line}`, inputs, document };
}

function refusal(file: string, line: number | null, code: string, message: string): InputError {
  return new InputError([{ file, line, column: null, code, message }]);
}

export function isMap(value: unknown): value is { readonly [key: string]: Json } {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
