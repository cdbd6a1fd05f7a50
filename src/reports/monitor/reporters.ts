import type { MonitorResult } from '../../result/monitor.ts';
import type { ReportFormat } from '../report-formats.ts';
import type { TextOptions } from '../text/page.ts';

/** The reporters of `monitor` by name. */
export const monitorReporters = {
  text: async () => (await import('./text.ts')).monitorText,
  html: () => reporter('html'),
  markdown: () => reporter('markdown'),
  json: async () => (await import('./json.ts')).monitorDocument,
} as const satisfies Readonly<
  Record<string, () => Promise<(result: MonitorResult, options: TextOptions) => string>>
>;

async function reporter(format: ReportFormat) {
  const { monitorReport } = await import('./report.ts');
  const { reportFormats } = await import('../report-formats.ts');
  const { languages } = await import('../words/language.ts');
  return (result: MonitorResult, { version }: TextOptions) =>
    reportFormats[format](monitorReport(result, languages.en, version));
}
