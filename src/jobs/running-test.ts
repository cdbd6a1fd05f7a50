import type { DropLog } from '../logs/drop.ts';
import { InputError, problemLine } from '../problem/problem.ts';
import type { Documents } from './documents-of.ts';
import { type ImpactTest, readImpactTest } from './impact-test.ts';

/** Codes of a log in which no drop stands yet, which is a fault only for who wants a result. */
const NOTHING_YET: ReadonlySet<string> = new Set(['empty-file', 'no-header', 'no-rows']);

/** A test that may still be running, and what was found of logs that hold no drop yet: sentences. */
export interface RunningTest {
  readonly test: ImpactTest;
  readonly unbegun: readonly string[];
}

/**
 * Reads a test that may still be running: logs without a row (empty, or a header alone) are left out.
 *
 * @throws InputError with the problems of all documents and logs
 */
export async function readRunningTest(documents: Documents): Promise<RunningTest> {
  try {
    return { test: await readImpactTest(documents), unbegun: [] };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const empty = error.problems.filter(({ code }) => NOTHING_YET.has(code));
    const files = new Set(empty.map(({ file }) => file));
    if (files.size === 0 || error.problems.length > empty.length) throw error;
    const logs = documents.logs.filter(({ source }) => !files.has(nameOf(source)));
    if (logs.length === documents.logs.length) throw error;
    const test = await readImpactTest({ ...documents, logs });
    return { test, unbegun: empty.map((problem) => problemLine(problem)) };
  }
}

function nameOf(source: Documents['logs'][number]['source']): DropLog['path'] {
  if (typeof source === 'string') return source;
  return 'named' in source ? source.named : '-';
}
