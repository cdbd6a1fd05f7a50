import type { EstimatorName, Specification } from '../documents/kinds.ts';
import type { ImpactResult } from '../result/analysis.ts';
import type { EnduranceResult } from '../result/endurance.ts';
import type { IntervalKind } from '../result/estimate.ts';
import { analyzeImpact } from './analyze-impact.ts';
import { type Documents, documentsOf, type Request } from './documents-of.ts';
import type { DrumReading } from './drum-run.ts';
import { readImpactTest } from './impact-test.ts';

/** How a test is read, and what its intervals rest on. */
export interface Reading extends DrumReading {
  /** Of drop tests; calibrated where it is left out. */
  readonly intervals?: IntervalKind;
}

/**
 * The main job: reads a test, checks it against its protocol, estimates, and judges where there is a specification.
 *
 * @param stdin what `-` among the logs stands for.
 * @param estimators asked for beside those of the method and the protocol; of drop tests only.
 * @param reading how the logs of a drum test are read, and what the intervals of a drop test rest on.
 * @throws InputError with every problem of documents and logs; nothing is evaluated then.
 */
export async function analyze(
  request: Request,
  stdin: AsyncIterable<Uint8Array>,
  estimators: readonly EstimatorName[] = [],
  reading: Reading = {},
): Promise<ImpactResult | EnduranceResult> {
  const documents = documentsOf(request, stdin);
  return (await openTest(documents, estimators, reading))(documents.specification);
}

/**
 * Reads the logs of a test once: what it gives back analyses and judges the test by any specification, and reads
 * nothing more.
 */
export async function openTest(
  documents: Documents,
  estimators: readonly EstimatorName[] = [],
  reading: Reading = {},
): Promise<(specification: Specification | null) => ImpactResult | EnduranceResult> {
  const { protocol } = documents;
  if (protocol.kind === 'impact') {
    const test = await readImpactTest(documents);
    return (specification) => analyzeImpact({ ...test, specification }, estimators, reading.intervals);
  }
  // Loaded only for drum tests: a drop test need not wait for what reads millions of rows.
  const { readEnduranceTest } = await import('./endurance-test.ts');
  const { analyzeEndurance } = await import('./analyze-endurance.ts');
  const test = await readEnduranceTest({ ...documents, protocol }, reading);
  return (specification) => analyzeEndurance({ ...test, specification });
}
