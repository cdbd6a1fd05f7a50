import type { MonitorResult } from '../../result/monitor.ts';
import type { TextOptions } from '../text/page.ts';

/** The reporters of `monitor` by name. */
export const monitorReporters = {
  text: async () => (await import('./text.ts')).monitorText,
  json: async () => (await import('./json.ts')).monitorDocument,
} as const satisfies Readonly<
  Record<string, () => Promise<(result: MonitorResult, options: TextOptions) => string>>
>;
