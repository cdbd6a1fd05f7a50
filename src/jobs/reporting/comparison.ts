import { InputError } from '../../problem/problem.ts';
import type { ComparisonResult } from '../../result/comparison.ts';
import type { ReportedRun } from '../../result/report.ts';
import { compare } from '../compare.ts';

/**
 * The constructions of a report against each other, where they can be compared at all: tests of one kind with two
 * constructions or more between them.
 *
 * @param despite reasons for which differences are put aside, by the factor's name.
 * @throws InputError where differences are put aside and nothing can be compared.
 */
export async function comparisonOfRuns(
  paths: readonly string[],
  runs: readonly ReportedRun[],
  despite: ReadonlyMap<string, string>,
): Promise<ComparisonResult | null> {
  const kinds = new Set(runs.map(({ result }) => result.kind));
  const constructions = new Set(
    runs.flatMap((run) => run.constructions.map(({ id, revision }) => `${id}\n${revision}`)),
  );
  if (kinds.size > 1 || constructions.size < 2) {
    if (despite.size === 0) return null;
    const message = 'found --despite, expected tests of one kind with two constructions or more to compare';
    throw new InputError([
      { file: '--despite', line: null, column: null, code: 'nothing-compared', message },
    ]);
  }
  try {
    return await compare(paths, { despite });
  } catch (error) {
    // The runs were read; what compare has no model for is still reported test by test.
    if (error instanceof InputError && despite.size === 0) return null;
    throw error;
  }
}
