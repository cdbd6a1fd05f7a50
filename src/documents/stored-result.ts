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
  const refuse = (code: string, message: string) =>
    new InputError([{ file: path, line: null, column: null, code, message }]);
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch (error) {
    throw refuse(...fileTrouble(error));
  }
  let document: Json;
  try {
    document = JSON.parse(text);
  } catch {
    throw refuse('not-json', 'found no JSON, expected the result that "tirelab analyze --json" wrote');
  }
  if (!isMap(document) || document.schema !== 'tirelab.result/1') {
    const found =
      isMap(document) && typeof document.schema === 'string' ? quote(document.schema) : 'something else';
    throw refuse('not-a-result', `found ${found}, expected a result (schema tirelab.result/1)`);
  }
  const inputs = (Array.isArray(document.inputs) ? document.inputs : []).filter(isMap).flatMap((input) => {
    const { role, path: at, sha256 } = input;
    return typeof role === 'string' && typeof at === 'string' && typeof sha256 === 'string'
      ? [{ role, path: at, sha256 }]
      : [];
  });
  return { path, inputs, document };
}

export function isMap(value: unknown): value is { readonly [key: string]: Json } {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
