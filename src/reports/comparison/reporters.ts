import type { ComparisonResult } from '../../result/comparison.ts';
import type { TextOptions } from '../text/page.ts';
import type { LanguageCode } from '../words/language.ts';

/** How a comparison is to be set; the language is that of the HTML, all else is English. */
export interface ComparisonOptions extends TextOptions {
  readonly language: LanguageCode;
}

export type ComparisonReporter = (result: ComparisonResult, options: ComparisonOptions) => string;

/** The reporters of comparisons by the name that `--format` gives them. */
export const comparisonReporters = {
  text: async () => (await import('./text.ts')).comparisonText,
  json: async () => {
    const { comparisonDocument } = await import('./json.ts');
    return (result, { version }) => comparisonDocument(result, version);
  },
  markdown: async () => (await import('./markdown.ts')).comparisonMarkdown,
  html: async () => {
    const { comparisonReport } = await import('./report.ts');
    const { html } = await import('../html/html.ts');
    const { languages } = await import('../words/language.ts');
    return (result, { language, version }) => html(comparisonReport(result, languages[language], version));
  },
  ndjson: async () => (await import('./ndjson.ts')).comparisonLines,
  csv: async () => (await import('./csv.ts')).comparisonCsv,
} as const satisfies Readonly<Record<string, () => Promise<ComparisonReporter>>>;

export type ComparisonFormat = keyof typeof comparisonReporters;
