import type { InstrumentsResult } from '../../result/instruments.ts';
import { jsonText } from '../json-text.ts';
import type { TextOptions } from '../text/page.ts';

/** The document of `instruments --json`. */
export function instrumentsDocument(
  result: InstrumentsResult,
  { version }: Pick<TextOptions, 'version'>,
): string {
  return jsonText({ schema: 'tirelab.instruments/1', tool: { name: 'tirelab', version }, ...result });
}
