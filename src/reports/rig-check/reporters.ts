import type { RigCheckResult } from '../../result/rig-check.ts';
import type { TextOptions } from '../text/page.ts';

/** The reporters of `rig` by name. */
export const rigCheckReporters = {
  text: async () => (await import('./text.ts')).rigCheckText,
  json: async () => (await import('./json.ts')).rigCheckDocument,
} as const satisfies Readonly<
  Record<string, () => Promise<(result: RigCheckResult, options: TextOptions) => string>>
>;
