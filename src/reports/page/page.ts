import type { JudgedCriterion } from '../../result/criterion.ts';
import type { ReportedTest } from '../../result/report.ts';
import { findingOf, judgementOf, nextSteps, notShown, uncertaintyOf } from '../content/answer.ts';
import { criteriaTable } from '../content/criteria-table.ts';
import { gramsBesideJoules } from '../content/grams.ts';
import { reportName, subtitleOf } from '../content/identity.ts';
import { chief, comparison } from '../content/pictures.ts';
import { type Subject, subjectsOf } from '../content/subject.ts';
import { type Block, figure, heading, list, paragraph, type ReportDocument } from '../document/blocks.ts';
import { rangeText, valueText } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';

/** Rows that leave room on one sheet for all else. */
const MOST = { criteria: 5, photos: 2, subjects: 8, item: 170, caption: 70, verdict: 220, name: 24 } as const;

/** The one page on which a product manager decides: the answer, how sure, criterion by criterion, one picture. */
export function pageDocument(
  tests: readonly ReportedTest[],
  language: Language,
  version: string,
): ReportDocument {
  const { words } = language;
  const subjects = subjectsOf(tests).map((subject) => ({
    ...subject,
    name: subject.name && short(subject.name, MOST.name),
    criteria: subject.criteria.map(shortened),
  }));
  const [only] = subjects;
  const name = reportName(tests);
  const blocks =
    subjects.length === 1 && only !== undefined ? ofOne(only, language) : ofSeveral(subjects, language);
  return {
    language,
    kind: 'page',
    title: `${words.headings.page}: ${only?.name ?? name}`.slice(0, 110),
    name,
    subtitle: subtitleOf(tests, language).slice(0, 200),
    blocks: [
      ...blocks,
      paragraph(
        `${words.texts.resultsRelate} ${words.cautions.always[1]} ${words.items.tool} tirelab ${version}.`,
        'small',
      ),
    ],
    end: words.texts.end(name),
  };
}

function ofOne(subject: Subject, language: Language): Block[] {
  const { words } = language;
  const { test, verdict } = subject;
  const judged = judgementOf(subject, language);
  const { question } = test.request;
  return [
    ...(question === null ? [] : [paragraph(`${words.items.question}: ${short(question)}`, 'small')]),
    paragraph(findingOf(subject, language), 'lead'),
    paragraph(uncertaintyOf(subject, language).join(' ')),
    judged === null || verdict === null
      ? paragraph(words.answer.noSpecification)
      : { kind: 'verdict', verdict, text: short(judged, MOST.verdict) },
    ...criteriaTable(subject.criteria, MOST.criteria, language),
    ...beside(figure(chief(subject, 'chief', language)), photosOf(test, language)),
    ...gramsBesideJoules([subject], language),
    ...closing([subject], language),
  ];
}

function ofSeveral(subjects: readonly Subject[], language: Language): Block[] {
  const { words } = language;
  const shown = subjects.slice(0, MOST.subjects);
  return [
    ...list(shown.map((subject) => findingOf(subject, language))),
    {
      kind: 'table',
      caption: words.headings.comparison,
      columns: [
        { head: words.items.construction },
        { head: words.items.joules, align: 'right' },
        { head: words.items.interval },
        { head: words.items.evidence },
        { head: words.criteria.verdict },
      ],
      rows: shown.map(({ name, first, verdict }) => [
        { text: name ?? '—' },
        { text: (first && valueText(language, first, 1)) ?? '—' },
        { text: (first && rangeText(language, first, 1)) ?? '—' },
        { text: first === null ? '—' : `${words.tyres(first.specimens)}, ${words.drops(first.drops)}` },
        verdict === null ? { text: '—' } : { text: words.verdict[verdict], verdict },
      ]),
      below: subjects.length > shown.length ? words.charts.more(subjects.length - shown.length) : undefined,
    },
    ...figure(comparison(shown, 'chief', language)),
    ...gramsBesideJoules(shown, language),
    ...closing(shown, language),
  ];
}

/** What is not shown, beside what comes next. */
function closing(subjects: readonly Subject[], language: Language): Block[] {
  const { headings } = language.words;
  const together = (of: (subject: Subject) => string[], most: number) =>
    [...new Set(subjects.flatMap(of))].slice(0, most).map((text) => short(text));
  return [
    {
      kind: 'columns',
      columns: [
        [heading(headings.notShown), ...list(together((subject) => notShown(subject, language), 5))],
        [heading(headings.next), ...list(together((subject) => nextSteps(subject, language), 6))],
      ],
    },
  ];
}

/** The picture, with photographs at its side where the run names some. */
function beside(picture: Block[], photos: Block[]): Block[] {
  if (picture.length === 0 || photos.length === 0) return [...picture, ...photos];
  return [{ kind: 'columns', columns: [picture, photos], isFirstWide: true }];
}

function photosOf({ photos }: ReportedTest, language: Language): Block[] {
  if (photos.length === 0) return [];
  const shown = photos
    .slice(0, MOST.photos)
    .map((photo) => ({ ...photo, caption: short(photo.caption, MOST.caption) }));
  const rest = photos.length - shown.length;
  return [
    { kind: 'photos', photos: shown },
    ...(rest > 0 ? [paragraph(language.words.items.morePhotos(rest), 'small')] : []),
  ];
}

/** Foreign text in the room that it has on one sheet. */
function short(text: string, most: number = MOST.item): string {
  return text.length > most ? `${text.slice(0, most - 1)}…` : text;
}

function shortened(criterion: JudgedCriterion): JudgedCriterion {
  return { ...criterion, id: short(criterion.id, MOST.name) };
}
