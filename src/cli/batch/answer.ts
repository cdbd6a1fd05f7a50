import { type EachOptions, eachAnalyzer } from '../../jobs/analyze-each.ts';
import type { Request } from '../../jobs/documents-of.ts';
import type { Problem } from '../../problem/problem.ts';
import { batchCsvRow } from '../../reports/batch/csv.ts';
import { entryElement, entryLine } from '../../reports/batch/entry.ts';
import { type BatchRow, batchRow } from '../../reports/batch/text.ts';
import type { BatchOutcome } from '../../result/batch.ts';
import { exitStatus } from '../../verdict/exit-status.ts';

/** How a batch is printed. */
export const BATCH_FORMATS = ['text', 'json', 'ndjson', 'csv'] as const;
export type BatchFormat = (typeof BATCH_FORMATS)[number];

/** Some runs of a batch, and how each is to be analysed and told. */
export interface BatchTask {
  readonly requests: readonly Request[];
  readonly options: EachOptions;
  readonly format: BatchFormat;
  readonly version: string;
}

/** What is handed back of a run: ready to be printed, so that whole results need not be copied between threads. */
export interface Told {
  readonly file: string;
  /** Empty for `text`, whose table needs all rows. */
  readonly text: string;
  readonly row: BatchRow | null;
  readonly status: 0 | 1 | 2 | 3;
  /** The verdict; without a specification how the protocol was kept; null where the run could not be read. */
  readonly ending: string | null;
  readonly problems: readonly Problem[];
}

/** What carries batch tasks out, one after the other: documents that runs share are read once by each. */
export function batchAnswerer(): (task: BatchTask) => Promise<Told[]> {
  let analyze: ReturnType<typeof eachAnalyzer> | null = null;
  return async ({ requests, options, format, version }) => {
    analyze ??= eachAnalyzer(options);
    const told: Told[] = [];
    for (const request of requests) told.push(tell(await analyze(request), format, version));
    return told;
  };
}

function tell(outcome: BatchOutcome, format: BatchFormat, version: string): Told {
  const { file, result, problems } = outcome;
  return {
    file,
    text: textOf(outcome, format, version),
    row: format === 'text' ? batchRow(outcome) : null,
    status: result === null ? 2 : exitStatus(result),
    ending: result && (result.verdict ?? result.conformance.status),
    problems: problems ?? [],
  };
}

function textOf(outcome: BatchOutcome, format: BatchFormat, version: string): string {
  switch (format) {
    case 'ndjson':
      return entryLine(outcome, version);
    case 'json':
      return entryElement(outcome, version);
    case 'csv':
      return batchCsvRow(outcome);
    case 'text':
      return '';
  }
}
