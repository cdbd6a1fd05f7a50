import type { InstrumentsResult } from '../../result/instruments.ts';
import type { TextOptions } from '../text/page.ts';

/** The reporters of `instruments` by name. */
export const instrumentsReporters = {
  text: async () => (await import('./text.ts')).instrumentsText,
  json: async () => (await import('./json.ts')).instrumentsDocument,
} as const satisfies Readonly<
  Record<string, () => Promise<(result: InstrumentsResult, options: TextOptions) => string>>
>;
