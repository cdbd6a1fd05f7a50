import { InputError } from '../../problem/problem.ts';
import type { ComparisonResult } from '../../result/comparison.ts';
import { isDrum, type ReportedRun } from '../../result/report.ts';
import { compare } from '../compare.ts';

/**
 * The runs of a report against each other, where they can be compared at all: two drop tests or more, of one
 * construction each.
 *
 * @param despite reasons for which differences are put aside, by the factor's name.
 * @throws InputError where differences are put aside and nothing can be compared.
 */
export async function comparisonOfRuns(
  paths: readonly string[],
  runs: readonly ReportedRun[],
  despite: ReadonlyMap<string, string>,
): Promise<ComparisonResult | null> {
  const isComparable = runs.length > 1 && runs.every((run) => !isDrum(run) && run.constructions.length === 1);
  if (!isComparable) {
    if (despite.size === 0) return null;
    const message = 'found --despite, expected two drop tests or more of one construction each to compare';
    throw new InputError([
      { file: '--despite', line: null, column: null, code: 'nothing-compared', message },
    ]);
  }
  try {
    return await compare(paths, { despite });
  } catch (error) {
    // Runs that compare has no model for are still reported each by itself.
    const isForeign =
      error instanceof InputError && error.problems.every(({ code }) => code === 'damage-not-compared');
    if (isForeign && despite.size === 0) return null;
    throw error;
  }
}
