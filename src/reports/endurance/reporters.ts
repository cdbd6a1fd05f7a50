import type { EnduranceResult } from '../../result/endurance.ts';
import type { TextOptions } from '../text/page.ts';

/** The reporters of drum tests, by the names that those of drop tests have. */
export const enduranceReporters = {
  text: async () => (await import('./text.ts')).enduranceText,
  json: async () => {
    const { enduranceDocument } = await import('./json.ts');
    return (result: EnduranceResult, { version }: TextOptions) => enduranceDocument(result, version);
  },
} as const satisfies Readonly<
  Record<string, () => Promise<(result: EnduranceResult, options: TextOptions) => string>>
>;
