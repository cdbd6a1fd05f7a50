import type { BatchOutcome } from '../../result/batch.ts';
import type { Estimate } from '../../result/estimate.ts';
import { enduranceRecord } from '../endurance/json.ts';
import { analysisRecord } from '../json.ts';
import { type JsonRecord, jsonLine, jsonText } from '../json-text.ts';

/** One run of a batch as a line of `--ndjson`: its result, or its problems, with the file that was asked for. */
export function entryLine({ file, ...outcome }: BatchOutcome, version: string): string {
  const { schema, ...rest } =
    outcome.problems === null ? recordOf(outcome.result, version) : problemsRecord(outcome.problems);
  return `${jsonLine({ schema, file, ...rest })}\n`;
}

/** The same as an element of `runs` of a `tirelab.batch/1`. */
export function entryElement({ file, result, problems }: BatchOutcome, version: string): string {
  const element = { file, result: result && recordOf(result, version), problems: problems ?? [] };
  return jsonText(element).trimEnd();
}

function recordOf(result: NonNullable<BatchOutcome['result']>, version: string): JsonRecord {
  return result.kind === 'impact' ? analysisRecord(result, version) : enduranceRecord(result, version);
}

function problemsRecord(problems: NonNullable<BatchOutcome['problems']>): JsonRecord {
  return { schema: 'tirelab.problems/1', problems };
}

/** The numbers by which runs are told apart at a glance; null where a run has none. */
export function principalEstimates({ estimates }: { readonly estimates: readonly Estimate[] }) {
  const [headline = null] = estimates;
  const alike = (quantities: readonly string[], probability?: number) =>
    estimates.find(
      (one) =>
        quantities.includes(one.quantity) &&
        one.probability === probability &&
        one.sample === headline?.sample,
    ) ?? null;
  return {
    headline,
    tenth: alike(['failureEnergyQuantile', 'lifeQuantile'], 0.1),
    spread: alike(['energySpread', 'weibullShape']),
  };
}
