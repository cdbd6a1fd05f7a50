import type { RigCheckResult } from '../../result/rig-check.ts';
import { jsonText } from '../json-text.ts';
import type { TextOptions } from '../text/page.ts';

/** The document of `rig --json`. */
export function rigCheckDocument(result: RigCheckResult, { version }: Pick<TextOptions, 'version'>): string {
  return jsonText({ schema: 'tirelab.rig-check/1', tool: { name: 'tirelab', version }, ...result });
}
