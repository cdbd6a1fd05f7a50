import type { ComparisonResult } from '../../result/comparison.ts';
import type { TextOptions } from '../text/page.ts';

export type ComparisonReporter = (result: ComparisonResult, options: TextOptions) => string;

/** The reporters of comparisons by the name that `--format` gives them. */
export const comparisonReporters = {
  text: async () => (await import('./text.ts')).comparisonText,
  json: async () => {
    const { comparisonDocument } = await import('./json.ts');
    return (result, { version }) => comparisonDocument(result, version);
  },
  markdown: async () => (await import('./markdown.ts')).comparisonMarkdown,
  csv: async () => (await import('./csv.ts')).comparisonCsv,
} as const satisfies Readonly<Record<string, () => Promise<ComparisonReporter>>>;

export type ComparisonFormat = keyof typeof comparisonReporters;
