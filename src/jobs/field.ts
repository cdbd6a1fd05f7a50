import { findResults } from '../documents/find-results.ts';
import { isMap, type StoredResult } from '../documents/stored-result.ts';
import { agreementOf } from '../field/agreement.ts';
import { circumstancesOf } from '../field/circumstances.ts';
import {
  type ComparedCause,
  causesOf,
  constructionInField,
  countOf,
  LEVEL,
  ratiosOf,
} from '../field/rates.ts';
import type { LogSource } from '../logs/bytes.ts';
import { type Ride, readRides } from '../logs/rides.ts';
import { InputError } from '../problem/problem.ts';
import type { FieldAgreement, FieldConstruction, FieldResult } from '../result/field.ts';
import { grouped } from '../statistics/summary/grouped.ts';

/**
 * Flats in the field: rates of each construction, their ratios, what may stand for the construction, and whether they agree with stored
 * results of the laboratory. No rider is named in the result.
 *
 * @param asked the cause that is compared; null is pinch where it occurs, else all flats
 * @param results files or folders of stored results of drop tests
 * @throws InputError with the problems of the ride log and of the results, and for a log without kilometres
 */
export async function field(
  source: LogSource,
  asked: ComparedCause | null,
  results: readonly string[],
): Promise<FieldResult> {
  const { path, sha256, bytes, records: rides, findings } = await readRides(source);
  const byConstruction = grouped(rides, ({ construction }) => construction).map(([construction, own]) => ({
    construction,
    rides: own,
  }));
  const still = byConstruction.filter(({ rides: own }) => !(kilometres(own) > 0));
  if (still.length > 0) {
    throw new InputError(still.map(({ rides: own }) => standingStill(path, own)));
  }
  const causes = causesOf(rides);
  const cause = asked ?? (causes.includes('pinch') ? 'pinch' : 'all');
  const constructions = byConstruction.map(({ construction, rides: own }) =>
    constructionInField(construction, own, cause, causes.includes(cause) ? causes : [...causes, cause]),
  );
  const unnamed = rides.filter(({ flats, cause: own }) => flats > 0 && own === null).length;
  return {
    inputs: [{ role: 'rides', path, sha256, bytes, rows: rides.length }],
    level: LEVEL,
    cause,
    riders: new Set(rides.map(({ rider }) => rider)).size,
    constructions,
    ratios: ratiosOf(
      byConstruction.map(({ construction, rides: own }) => ({ construction, count: countOf(own, cause) })),
    ),
    circumstances: circumstancesOf(byConstruction),
    agreement: results.length === 0 ? null : agreementOf(inBoth(findResults(results), constructions, cause)),
    notes: [
      ...findings.map(({ message, line, column }) => `${path}:${line}:${column}: ${message}`),
      ...(unnamed > 0 ? [`${unnamed} row(s) with flats name no cause: they count among all flats only`] : []),
      'the exact limits take every flat as independent of the others',
    ],
  };
}

function kilometres(rides: readonly Ride[]): number {
  return rides.reduce((sum, { distance }) => sum + distance, 0);
}

function standingStill(file: string, [first]: readonly Ride[]) {
  const message =
    'found no kilometres for the construction of this row, expected a distance above 0; with an odometer the first reading is where counting begins: note it when the tyre is fitted';
  return { file, line: first!.line, column: null, code: 'no-distance', message };
}

/** The constructions that field and laboratory both know, with the median of the laboratory. */
function inBoth(
  stored: readonly StoredResult[],
  constructions: readonly FieldConstruction[],
  cause: ComparedCause,
): FieldAgreement['constructions'] {
  const medians = stored.flatMap(mediansOf);
  return constructions.flatMap(({ construction, rates }) => {
    const own = medians.filter(({ name }) => name === construction || name.split('@')[0] === construction);
    if (own.length > 1) {
      const paths = own.map(({ path }) => path).join(' and ');
      const message = `found several results of ${construction} (${paths}), expected one; name the one to compare, or write the construction as id@revision`;
      throw new InputError([
        { file: own[1]!.path, line: null, column: null, code: 'several-results', message },
      ]);
    }
    const rate = rates.find((one) => one.cause === cause)?.rate;
    return own[0] === undefined || rate === undefined ? [] : [{ construction, energy: own[0].energy, rate }];
  });
}

/** The headline medians of a stored drop test, by `id@revision`. */
function mediansOf({ path, document }: StoredResult): { name: string; energy: number; path: string }[] {
  const { constructions, estimates } = document;
  const tested = (Array.isArray(constructions) ? constructions : []).filter(isMap);
  const medians = (Array.isArray(estimates) ? estimates : [])
    .filter(isMap)
    .filter(({ quantity, value }) => quantity === 'medianFailureEnergy' && typeof value === 'number');
  return tested.flatMap(({ id, revision }) => {
    const own = medians.find(
      ({ construction }) =>
        tested.length === 1 || construction === id || construction === `${id}@${revision}`,
    );
    return own === undefined ? [] : [{ name: `${id}@${revision}`, energy: own.value as number, path }];
  });
}
