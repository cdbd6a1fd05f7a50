import type { EstimatorName } from '../documents/kinds.ts';
import { type Library, rememberingLibrary } from '../documents/library.ts';
import { InputError } from '../problem/problem.ts';
import type { BatchOutcome } from '../result/batch.ts';
import { openTest, type Reading } from './analyze.ts';
import { documentsOf, type Request } from './documents-of.ts';

/** What every run of a batch is analysed by. */
export interface EachOptions extends Pick<Reading, 'intervals'> {
  readonly estimators: readonly EstimatorName[];
}

/**
 * Analyses runs one by one. What is wrong with the files of one is its outcome, and stops none of the others; documents
 * that they share are read once.
 */
export function eachAnalyzer({
  estimators,
  ...reading
}: EachOptions): (request: Request) => Promise<BatchOutcome> {
  const library: Library = rememberingLibrary();
  return async (request) => {
    const file = fileOf(request);
    try {
      const documents = documentsOf(request, NO_INPUT, library);
      const judge = await openTest(documents, estimators, reading);
      return { file, result: judge(documents.specification), problems: null };
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      return { file, result: null, problems: error.problems };
    }
  };
}

/** What a run is called in a batch: its file, or the first log that was given. */
function fileOf(request: Request): string {
  return request.kind === 'run' ? request.path : request.logs[0]!;
}

/** Runs of a batch are files; nothing is read from standard input. */
const NO_INPUT: AsyncIterable<Uint8Array> = { async *[Symbol.asyncIterator]() {} };
