import type { ExportedResult } from '../../result/export.ts';
import type { TextOptions } from '../text/page.ts';

/** A result for outside the house, in words or as `tirelab.export/1`. */
export const exportReporters = {
  text: async () => (await import('./text.ts')).exportText,
  json: async () => {
    const { jsonText } = await import('../json-text.ts');
    return (exported: ExportedResult, { version }: TextOptions) =>
      jsonText({ schema: 'tirelab.export/1', tool: { name: 'tirelab', version }, ...exported });
  },
} as const satisfies Readonly<
  Record<string, () => Promise<(exported: ExportedResult, options: TextOptions) => string>>
>;
