import type { ComparisonResult } from '../../result/comparison.ts';
import { comparisonAnswer, energyBlocks, factorBlocks, ratioFigure } from '../content/comparison.ts';
import { sectionBlocks } from '../content/comparison-sections.ts';
import { figure, heading, list, paragraph, type ReportDocument } from '../document/blocks.ts';
import { named } from '../text/page.ts';
import type { Language } from '../words/language.ts';

/** More pairs than these are told in the table only. */
const MOST_PAIRS = 10;

/** A comparison as a report: the answer or the refusal, the picture, what is equal and what not, the numbers. */
export function comparisonReport(
  result: ComparisonResult,
  language: Language,
  version: string,
): ReportDocument {
  const { comparison: words, texts, items, headings, role, cautions } = language.words;
  const name = language.words.list(
    result.samples.map(({ label }) => named(label)),
    4,
  );
  return {
    language,
    kind: 'full',
    title: words.heading,
    name,
    subtitle: name,
    blocks: [
      ...comparisonAnswer(result, MOST_PAIRS, language),
      ...figure(ratioFigure(result, 'ratios', language)),
      ...factorBlocks(result, language),
      ...energyBlocks(result, language),
      ...sectionBlocks(result, 'trade-off', language),
      heading(headings.cautions),
      ...list(result.kind === 'impact' ? cautions.always : cautions.drumAlways),
      heading(headings.records),
      {
        kind: 'table',
        caption: headings.records,
        columns: [{ head: items.role }, { head: items.file }, { head: 'SHA-256' }],
        rows: result.inputs.map(({ role: kind, path, sha256 }) => [
          { text: role(kind), isWhole: true },
          { text: path },
          { text: sha256, isHash: true },
        ]),
      },
      paragraph(`${items.tool} tirelab ${version}.`, 'small'),
    ],
    end: texts.end(name),
  };
}
