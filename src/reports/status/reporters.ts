import type { StatusResult } from '../../result/status.ts';
import type { TextOptions } from '../text/page.ts';

/** The reporters of `status` by name. */
export const statusReporters = {
  text: async () => (await import('./text.ts')).statusText,
  json: async () => {
    const { statusDocument } = await import('./json.ts');
    return (result: StatusResult, { version }: TextOptions) => statusDocument(result, version);
  },
} as const satisfies Readonly<
  Record<string, () => Promise<(result: StatusResult, options: TextOptions) => string>>
>;
