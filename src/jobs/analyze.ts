import type { EstimatorName } from '../documents/kinds.ts';
import type { ImpactResult } from '../result/analysis.ts';
import { analyzeImpact } from './analyze-impact.ts';
import { documentsOf, type Request } from './documents-of.ts';
import { readImpactTest } from './impact-test.ts';

/**
 * The main job: reads a test, checks it against its protocol, estimates, and judges where there is a specification.
 *
 * @param stdin what `-` among the logs stands for.
 * @param estimators asked for beside those of the method and the protocol.
 * @throws InputError with every problem of documents and logs; nothing is evaluated then.
 */
export async function analyze(
  request: Request,
  stdin: AsyncIterable<Uint8Array>,
  estimators: readonly EstimatorName[] = [],
): Promise<ImpactResult> {
  return analyzeImpact(await readImpactTest(documentsOf(request, stdin)), estimators);
}
