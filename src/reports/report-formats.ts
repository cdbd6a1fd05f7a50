import type { ComparisonResult } from '../result/comparison.ts';
import type { ReportedRun } from '../result/report.ts';
import type { ReportDocument } from './document/blocks.ts';
import { fullDocument } from './full/report.ts';
import { html } from './html/html.ts';
import { type MarkdownPictures, markdown } from './markdown/markdown.ts';
import { pageDocument } from './page/page.ts';
import type { Language } from './words/language.ts';

/** The kinds of report by the name that `--kind` gives them. */
export const reportKinds = {
  page: pageDocument,
  full: fullDocument,
} as const satisfies Readonly<
  Record<
    string,
    (
      tests: readonly ReportedRun[],
      language: Language,
      version: string,
      compared?: ComparisonResult | null,
    ) => ReportDocument
  >
>;

export type ReportKind = keyof typeof reportKinds;

/** How a report may be set, by the name that `--format` gives it. */
export const reportFormats = { html, markdown } as const satisfies Readonly<
  Record<string, (document: ReportDocument, pictures?: MarkdownPictures) => string>
>;

export type ReportFormat = keyof typeof reportFormats;
