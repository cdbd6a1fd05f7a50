import type { RepeatabilityResult } from '../../result/repeatability.ts';
import type { TextOptions } from '../text/page.ts';

/** The reporters of `repeatability` by name. */
export const repeatabilityReporters = {
  text: async () => (await import('./text.ts')).repeatabilityText,
  json: async () => (await import('./json.ts')).repeatabilityDocument,
} as const satisfies Readonly<
  Record<string, () => Promise<(result: RepeatabilityResult, options: TextOptions) => string>>
>;
