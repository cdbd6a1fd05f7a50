import type { RepeatabilityResult } from '../../result/repeatability.ts';
import { jsonText } from '../json-text.ts';
import type { TextOptions } from '../text/page.ts';

/** The document of `repeatability --json`. */
export function repeatabilityDocument(
  result: RepeatabilityResult,
  { version }: Pick<TextOptions, 'version'>,
): string {
  return jsonText({ schema: 'tirelab.repeatability/1', tool: { name: 'tirelab', version }, ...result });
}
