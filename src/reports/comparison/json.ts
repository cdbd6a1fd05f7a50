import type { ComparisonResult } from '../../result/comparison.ts';
import { jsonText } from '../json-text.ts';

/** The document of `compare --json`: `tirelab.comparison/1`; energies in J, ratios second over first. */
export function comparisonDocument(result: ComparisonResult, version: string): string {
  const status = result.refused.length > 0 ? 'refused' : 'done';
  return jsonText({ schema: 'tirelab.comparison/1', tool: { name: 'tirelab', version }, status, ...result });
}
