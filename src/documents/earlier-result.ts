import { readFileSync } from 'node:fs';
import { quote } from '../problem/echo.ts';
import { InputError } from '../problem/problem.ts';

/** What an earlier result says of a strength. */
export interface EarlierResult {
  readonly path: string;
  /** J. */
  readonly median: number;
  /** J, for laws of ln E at the median; null where the test gave none. */
  readonly spread: number | null;
  readonly drops: number;
}

const SCHEMA = 'tirelab.result/1';

/**
 * Reads the median and spread from the JSON of an earlier analysis: the first entry of each that has a value.
 *
 * @throws InputError where the file cannot be read, is something else, or has no median
 */
export function loadEarlierResult(path: string): EarlierResult {
  const document = parsed(path, textOf(path));
  if (!isObject(document) || document.schema !== SCHEMA || document.kind !== 'impact') {
    const found =
      isObject(document) && typeof document.schema === 'string' ? quote(document.schema) : 'something else';
    throw problem(
      path,
      'not-a-result',
      `found ${found}, expected the result of a drop test (schema ${SCHEMA}): give what "tirelab analyze --json" wrote`,
    );
  }
  const estimates = Array.isArray(document.estimates) ? document.estimates.filter(isObject) : [];
  const first = (quantity: string) =>
    estimates.find((estimate) => estimate.quantity === quantity && positive(estimate.value) !== null);
  const median = first('medianFailureEnergy');
  const value = positive(median?.value);
  if (median === undefined || value === null) {
    throw problem(
      path,
      'no-median',
      'found no median failure energy with a value, expected one; a test without a single best median proposes nothing',
    );
  }
  const spread = first('energySpread');
  const size = positive(spread?.value);
  return {
    path,
    median: value,
    spread: size === null ? null : spread?.unit === '1' ? size * value : size,
    drops: positive(median.drops) ?? 1,
  };
}

function textOf(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    throw problem(path, 'no-such-file', 'the file cannot be read; check the path');
  }
}

function parsed(path: string, text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw problem(path, 'not-json', 'found no JSON, expected the result that "tirelab analyze --json" wrote');
  }
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function positive(value: unknown): number | null {
  return typeof value === 'number' && Number.isFinite(value) && value > 0 ? value : null;
}

function problem(file: string, code: string, message: string): InputError {
  return new InputError([{ file, line: null, column: null, code, message }]);
}
