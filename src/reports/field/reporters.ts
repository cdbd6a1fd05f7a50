import type { FieldResult } from '../../result/field.ts';
import type { TextOptions } from '../text/page.ts';

/** The reporters of `field` by name. */
export const fieldReporters = {
  text: async () => (await import('./text.ts')).fieldText,
  json: async () => (await import('./json.ts')).fieldDocument,
} as const satisfies Readonly<
  Record<string, () => Promise<(result: FieldResult, options: TextOptions) => string>>
>;
