import { InputError } from '../problem/problem.ts';
import { isMap, loadStoredResult } from './stored-result.ts';

/** What an earlier result says of a strength. */
export interface EarlierResult {
  readonly path: string;
  /** J. */
  readonly median: number;
  /** J, for laws of ln E at the median; null where the test gave none. */
  readonly spread: number | null;
  readonly drops: number;
}

/**
 * Reads the median and spread from the JSON of an earlier analysis: the first entry of each that has a value.
 *
 * @throws InputError where the file cannot be read, is something else, or has no median
 */
export function loadEarlierResult(path: string): EarlierResult {
  const { document } = loadStoredResult(path);
  if (document.kind !== 'impact') {
    throw problem(path, 'not-a-drop-test', 'found the result of another test, expected that of a drop test');
  }
  const estimates = Array.isArray(document.estimates) ? document.estimates.filter(isMap) : [];
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

function positive(value: unknown): number | null {
  return typeof value === 'number' && Number.isFinite(value) && value > 0 ? value : null;
}

function problem(file: string, code: string, message: string): InputError {
  return new InputError([{ file, line: null, column: null, code, message }]);
}
