import type { FieldResult } from '../../result/field.ts';
import { jsonText } from '../json-text.ts';
import type { TextOptions } from '../text/page.ts';

/** The document of `field --json`. */
export function fieldDocument(result: FieldResult, { version }: Pick<TextOptions, 'version'>): string {
  return jsonText({ schema: 'tirelab.field/1', tool: { name: 'tirelab', version }, ...result });
}
