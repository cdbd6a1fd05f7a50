import type { EstimatorName } from '../documents/kinds.ts';
import type { ImpactResult } from '../result/analysis.ts';
import type { EnduranceResult } from '../result/endurance.ts';
import { analyzeImpact } from './analyze-impact.ts';
import { type Documents, documentsOf, type Request } from './documents-of.ts';
import type { DrumReading } from './endurance-test.ts';
import { readImpactTest } from './impact-test.ts';

/**
 * The main job: reads a test, checks it against its protocol, estimates, and judges where there is a specification.
 *
 * @param stdin what `-` among the logs stands for.
 * @param estimators asked for beside those of the method and the protocol; of drop tests only.
 * @param reading how the logs of a drum test are read.
 * @throws InputError with every problem of documents and logs; nothing is evaluated then.
 */
export async function analyze(
  request: Request,
  stdin: AsyncIterable<Uint8Array>,
  estimators: readonly EstimatorName[] = [],
  reading: DrumReading = {},
): Promise<ImpactResult | EnduranceResult> {
  return analyzeDocuments(documentsOf(request, stdin), estimators, reading);
}

/** The same, once the documents have been read: by whoever judges one run by several specifications. */
export async function analyzeDocuments(
  documents: Documents,
  estimators: readonly EstimatorName[] = [],
  reading: DrumReading = {},
): Promise<ImpactResult | EnduranceResult> {
  const { protocol } = documents;
  if (protocol.kind === 'impact') return analyzeImpact(await readImpactTest(documents), estimators);
  // Loaded only for drum tests: a drop test need not wait for what reads millions of rows.
  const { readEnduranceTest } = await import('./endurance-test.ts');
  const { analyzeEndurance } = await import('./analyze-endurance.ts');
  return analyzeEndurance(await readEnduranceTest({ ...documents, protocol }, reading));
}
