import { isDrum, type ReportedRun } from '../../result/report.ts';
import { type Block, list, paragraph } from '../document/blocks.ts';
import { share } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';
import { budget } from './budget.ts';
import type { Section } from './section.ts';

/** What the intervals hold, and what the rig adds where its file states a budget. */
export function uncertainty(test: ReportedRun, language: Language): Section {
  const { headings, texts } = language.words;
  const level = share(language, test.confidence);
  const blocks = isDrum(test)
    ? [paragraph(texts.drumStatistical(level)), paragraph(texts.drumApparatus)]
    : [
        paragraph(texts.statistical(level)),
        ...(test.result.uncertainty === undefined
          ? [paragraph(texts.apparatus)]
          : budget(test.result.uncertainty, language)),
      ];
  return { heading: headings.uncertainty, blocks };
}

/** The statement of conformity: to which criteria it applies, by which rule, and with which risk. */
export function conformity({ result, request }: ReportedRun, language: Language): Section {
  const { headings, texts, items } = language.words;
  const { specification, criteria } = result;
  if (specification === null) {
    return { heading: headings.conformity, blocks: [paragraph(texts.noSpecification)] };
  }
  const rules = new Map<string, string[]>();
  for (const { rule, confidence, id, counted } of criteria) {
    if (!counted) continue;
    const said = (texts.decisionRisk[rule] ?? (() => rule))(
      share(language, confidence),
      share(language, Math.round(1e6 * (1 - confidence)) / 1e6),
    );
    rules.set(said, [...(rules.get(said) ?? []), id.slice(0, 48)]);
  }
  return {
    heading: headings.conformity,
    blocks: [
      {
        kind: 'terms',
        rows: [
          { term: items.rule, text: request.rule },
          { term: items.agreed, text: request.agreed },
        ],
      },
      ...(request.rule === null || request.agreed === null ? [paragraph(texts.noRuleStated)] : []),
      ...list([...rules].map(([rule, ids]) => `${language.words.list(ids, 12)} — ${rule}`)),
    ],
  };
}

/** What must be kept in mind, and the files with their hashes. */
export function records(
  test: ReportedRun,
  cautions: readonly string[],
  language: Language,
  version: string,
): Section[] {
  const { headings, items, role, texts } = language.words;
  const files = [
    ...test.result.inputs.map(({ role: kind, path, sha256, bytes, rows }) => ({
      kind: role(kind),
      path,
      sha256,
      bytes,
      rows,
    })),
    ...test.photos.map(({ path, sha256, bytes }) => ({
      kind: headings.photos,
      path,
      sha256,
      bytes,
      rows: null,
    })),
  ];
  const table: Block = {
    kind: 'table',
    caption: headings.records,
    columns: [{ head: items.role }, { head: items.file }, { head: 'SHA-256' }],
    rows: files.map(({ kind, path, sha256, bytes, rows }) => [
      { text: kind, isWhole: true },
      { text: `${path} (${rows === null ? items.bytes(bytes) : items.rows(rows)})` },
      { text: sha256, isHash: true },
    ]),
  };
  return [
    { heading: headings.cautions, blocks: [...list([...new Set(cautions)]), paragraph(texts.opinions)] },
    { heading: headings.records, blocks: [table, paragraph(`${items.tool} tirelab ${version}.`)] },
  ];
}
