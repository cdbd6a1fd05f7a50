import type { BatchOutcome } from '../../result/batch.ts';
import type { Estimate } from '../../result/estimate.ts';
import { type CsvValue, csvRow } from '../csv-cell.ts';
import { principalEstimates } from './entry.ts';

const COLUMNS = [
  ...['file', 'read', 'verdict', 'conformance', 'run', 'kind', 'protocol', 'constructions'],
  ...['specimens', 'drops', 'failures', 'deviations'],
  ...['quantity', 'unit', 'value', 'standard error', 'lower', 'upper', 'level', 'interval'],
  ...['10 % point', '10 % lower', '10 % upper', 'spread', 'spread lower', 'spread upper', 'why'],
];

export const BATCH_CSV_HEAD = `${csvRow(COLUMNS)}\n`;

/** One row a run: the headline quantity with its interval, the point at which one in ten fails, and the spread. */
export function batchCsvRow({ file, result, problems }: BatchOutcome): string {
  if (result === null) {
    const why = problems.map(({ message }) => message).join('; ');
    const empty = new Array<CsvValue>(COLUMNS.length - 3).fill(null);
    return `${csvRow([file, 'no', ...empty, why])}\n`;
  }
  const { headline, tenth, spread } = principalEstimates(result);
  const { conformance, sample, protocol, constructions } = result;
  return `${csvRow([
    ...[file, 'yes', result.verdict, conformance.status, result.run, result.kind],
    `${protocol.id}@${protocol.version}`,
    constructions.map(({ id, revision }) => `${id}@${revision}`).join(' '),
    ...[sample.specimens, sample.drops, sample.failures],
    conformance.deviations.reduce((sum, { count }) => sum + count, 0),
    ...[headline?.quantity ?? null, headline?.unit ?? null],
    ...[headline?.value ?? null, headline?.standardError ?? null],
    ...ends(headline),
    ...[headline?.interval?.level ?? null, headline?.interval?.method ?? null],
    ...[tenth?.value ?? null, ...ends(tenth), spread?.value ?? null, ...ends(spread)],
    conformance.why ?? headline?.why ?? null,
  ])}\n`;
}

function ends(estimate: Estimate | null): CsvValue[] {
  return [estimate?.interval?.lower ?? null, estimate?.interval?.upper ?? null];
}
