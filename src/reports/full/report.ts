import type { ComparisonResult } from '../../result/comparison.ts';
import { isDrum, type ReportedRun, type ReportedTest } from '../../result/report.ts';
import { cautionsOf } from '../content/answer.ts';
import { comparisonAnswer, energyBlocks, factorBlocks } from '../content/comparison.ts';
import { sectionBlocks } from '../content/comparison-sections.ts';
import { gramsBesideJoules } from '../content/grams.ts';
import { reportName, subtitleOf } from '../content/identity.ts';
import { comparison, massOfSubjects } from '../content/pictures.ts';
import { subjectsOf } from '../content/subject.ts';
import { type Block, figure, heading, paragraph, type ReportDocument } from '../document/blocks.ts';
import { named } from '../text/page.ts';
import type { Language } from '../words/language.ts';
import { answer, identification } from './beginning.ts';
import { checklist } from './checklist.ts';
import { conformity, records, uncertainty } from './closing.ts';
import { departures } from './departures.ts';
import { drumSections } from './drum.ts';
import { laws, regression } from './laws.ts';
import { conditions, items, method } from './method.ts';
import { results } from './results.ts';
import type { Section } from './section.ts';
import { correctedMasses, repeated, samples } from './session.ts';

/** More pairs than these are told in the table only. */
const MOST_PAIRS = 10;

/**
 * The full report, for the auditor: what ISO/IEC 17025:2017 asks of a test report in 7.8, each item there or listed as
 * missing. Several tests stand one after the other, after a look at all of them beside each other.
 *
 * @param compared the tests against each other; null where they were not compared.
 */
export function fullDocument(
  tests: readonly ReportedRun[],
  language: Language,
  version: string,
  compared: ComparisonResult | null = null,
): ReportDocument {
  const { words } = language;
  const name = reportName(tests);
  const isOne = tests.length === 1;
  const bodies = tests.flatMap((test, i) => {
    const id = `t${i + 1}`;
    const sections = isDrum(test)
      ? drumSections(test, id, language, version).filter(({ blocks }) => blocks.length > 0)
      : sectionsOf(test, id, language, version);
    if (isOne) return set(sections, 2);
    return [heading(`${words.items.run} ${named(test.result.run ?? String(i + 1))}`), ...set(sections, 3)];
  });
  const subjects = subjectsOf(tests.flatMap((test) => (isDrum(test) ? [] : [test])));
  return {
    language,
    kind: 'full',
    title: words.headings.report,
    name,
    subtitle: `${name} · ${subtitleOf(tests, language)}`,
    blocks: [
      ...(words.texts.recordLanguage !== null && bodies.some(hasRecord)
        ? [paragraph(words.texts.recordLanguage, 'small')]
        : []),
      ...(subjects.length > 1
        ? [
            heading(words.headings.comparison),
            ...(compared === null
              ? [paragraph(words.comparison.notComparable, 'small')]
              : comparisonAnswer(compared, MOST_PAIRS, language)),
            ...figure(comparison(subjects, compared, 'all-comparison', language)),
            ...gramsBesideJoules(subjects, language),
            ...figure(massOfSubjects(subjects, 'all-mass', language)),
            ...(compared === null
              ? []
              : [
                  ...factorBlocks(compared, language, 3),
                  ...energyBlocks(compared, language, 3),
                  ...sectionBlocks(compared, 'all-trade-off', language, 3),
                ]),
          ]
        : []),
      ...bodies,
    ],
    end: words.texts.end(name),
  };
}

function sectionsOf(test: ReportedTest, id: string, language: Language, version: string): Section[] {
  return [
    answer(test, language),
    identification(test, language, version),
    items(test, language),
    method(test, language),
    conditions(test, language),
    samples(test.result, language),
    ...results(test, id, language),
    laws(test.result.goodness, language),
    regression(test.result.regression, language),
    correctedMasses(test.result, language),
    repeated(test.result, language),
    ...departures(test, language),
    uncertainty(test, language),
    conformity(test, language),
    ...records(test, cautionsOfTest(test, language), language, version),
    checklist(
      test,
      test.conditions.some(({ logged }) => logged !== null),
      language,
    ),
  ].filter(({ blocks }) => blocks.length > 0);
}

function cautionsOfTest(test: ReportedTest, language: Language): string[] {
  return subjectsOf([test]).flatMap((subject) => cautionsOf(subject, language));
}

function set(sections: readonly Section[], level: 2 | 3): Block[] {
  return sections.flatMap(({ heading: text, blocks }) => [heading(text, level), ...blocks]);
}

/** Whether a block has words of the record, which another language marks. */
function hasRecord(block: Block): boolean {
  switch (block.kind) {
    case 'paragraph':
      return block.isRecord === true;
    case 'list':
      return block.items.some(({ isRecord }) => isRecord === true);
    case 'table':
      return block.rows.some((row) => row.some(({ isRecord }) => isRecord === true));
    case 'columns':
      return block.columns.some((column) => column.some(hasRecord));
    default:
      return false;
  }
}
