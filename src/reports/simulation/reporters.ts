import type { SimulationResult } from '../../result/simulation.ts';
import type { ReportFormat } from '../report-formats.ts';
import type { TextOptions } from '../text/page.ts';
import type { LanguageCode } from '../words/language.ts';

/** How a simulation is to be set; the language is that of the reports, text is English. */
export interface SimulationOptions extends TextOptions {
  readonly language: LanguageCode;
}

/** Turns a simulation into a text; it prints nothing and reads nothing but its arguments. */
export type SimulationReporter = (result: SimulationResult, options: SimulationOptions) => string;

/** The reporters by the name that `--format` gives them. */
export const simulationReporters = {
  text: async () => (await import('./text.ts')).simulationText,
  json: async () => {
    const { simulationDocument } = await import('./json.ts');
    return (result, { version }) => simulationDocument(result, version);
  },
  html: () => reporter('html'),
  markdown: () => reporter('markdown'),
} as const satisfies Readonly<Record<string, () => Promise<SimulationReporter>>>;

export type SimulationFormat = keyof typeof simulationReporters;

async function reporter(format: ReportFormat): Promise<SimulationReporter> {
  const { simulationReport } = await import('./report.ts');
  const { reportFormats } = await import('../report-formats.ts');
  const { languages } = await import('../words/language.ts');
  return (result, { language, version }) =>
    reportFormats[format](simulationReport(result, languages[language], version));
}
