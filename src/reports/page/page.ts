import type { ComparisonResult } from '../../result/comparison.ts';
import type { Photo, ReportedRun } from '../../result/report.ts';
import { judgementOf, nextSteps } from '../content/answer.ts';
import { comparisonAnswer } from '../content/comparison.ts';
import { criteriaTable } from '../content/criteria-table.ts';
import { gramsBesideJoules } from '../content/grams.ts';
import { reportName, subtitleOf } from '../content/identity.ts';
import { comparison } from '../content/pictures.ts';
import { provisional } from '../content/provisional.ts';
import { type Told, toldOf } from '../content/told.ts';
import { type Block, figure, heading, list, paragraph, type ReportDocument } from '../document/blocks.ts';
import { rangeText, valueText } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';

/** Rows that leave room on one sheet for all else. */
const MOST = {
  criteria: 5,
  photos: 2,
  subjects: 8,
  pairs: 3,
  reasons: 3,
  item: 170,
  caption: 70,
  verdict: 220,
  name: 24,
} as const;

/**
 * The one page on which a product manager decides: the answer, how sure, criterion by criterion, one picture.
 *
 * @param compared the tests against each other; null where they were not compared.
 */
export function pageDocument(
  tests: readonly ReportedRun[],
  language: Language,
  version: string,
  compared: ComparisonResult | null = null,
): ReportDocument {
  const { words } = language;
  const told = toldOf(tests, (text) => short(text, MOST.name), language);
  const [only] = told;
  const name = reportName(tests);
  const blocks =
    told.length === 1 && only !== undefined ? ofOne(only, language) : ofSeveral(told, compared, language);
  return {
    language,
    kind: 'page',
    title:
      `${words.headings.page}: ${told.length === 1 ? (only?.judged.name ?? name) : words.list(namesOf(told), 4)}`.slice(
        0,
        110,
      ),
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

function ofOne(told: Told, language: Language): Block[] {
  const { words } = language;
  const { judged, finding, uncertainty, photos } = told;
  const judgement = judgementOf(judged, language);
  const { question } = judged.test.request;
  return [
    ...(question === null ? [] : [paragraph(`${words.items.question}: ${short(question)}`, 'small')]),
    paragraph(finding, 'lead'),
    paragraph(uncertainty.join(' ')),
    ...provisional(judged.test, language, MOST.reasons),
    judgement === null || judged.verdict === null
      ? paragraph(words.answer.noSpecification)
      : { kind: 'verdict', verdict: judged.verdict, text: short(judgement, MOST.verdict) },
    ...criteriaTable(judged.criteria, MOST.criteria, language),
    ...beside(figure(told.picture('chief')), photosOf(photos, language)),
    ...told.grams,
    ...closing([told], language),
  ];
}

function ofSeveral(all: readonly Told[], compared: ComparisonResult | null, language: Language): Block[] {
  const { words } = language;
  const shown = all.slice(0, MOST.subjects);
  const drops = shown.flatMap(({ subject }) => subject ?? []);
  const picture =
    drops.length > 1 ? comparison(drops, compared, 'chief', language) : (shown[0]?.picture('chief') ?? null);
  return [
    ...(compared === null
      ? drops.length > 1
        ? [paragraph(words.comparison.notComparable, 'small')]
        : []
      : comparisonAnswer(compared, MOST.pairs, language)),
    ...list(shown.map(({ finding }) => finding)),
    {
      kind: 'table',
      caption: words.headings.comparison,
      columns: [
        { head: words.items.construction },
        { head: words.items.value, align: 'right' },
        { head: words.items.interval },
        { head: words.items.evidence },
        { head: words.criteria.verdict },
      ],
      rows: shown.map(({ judged: { name, first, verdict }, evidence }) => [
        { text: name ?? '—' },
        { text: (first && valueText(language, first, 1)) ?? '—' },
        { text: (first && rangeText(language, first, 1)) ?? '—' },
        { text: evidence },
        verdict === null ? { text: '—' } : { text: words.verdict[verdict], verdict },
      ]),
      below: all.length > shown.length ? words.charts.more(all.length - shown.length) : undefined,
    },
    ...figure(picture),
    ...gramsBesideJoules(drops, language),
    ...closing(shown, language),
  ];
}

/** What is not shown, beside what comes next. */
function closing(all: readonly Told[], language: Language): Block[] {
  const { headings } = language.words;
  const together = (texts: readonly string[], most: number) =>
    [...new Set(texts)].slice(0, most).map((text) => short(text));
  const isOne = all.length === 1;
  const next = all.flatMap(({ judged }) =>
    nextSteps(judged, language).map((step) =>
      isOne || judged.name === null ? step : `${judged.name}: ${step}`,
    ),
  );
  return [
    {
      kind: 'columns',
      columns: [
        [
          heading(headings.notShown),
          ...list(
            together(
              all.flatMap((told) => told.notShown),
              5,
            ),
          ),
        ],
        [heading(headings.next), ...list(together(next, 6))],
      ],
    },
  ];
}

/** The picture, with photographs at its side where the run names some. */
function beside(picture: Block[], photos: Block[]): Block[] {
  if (picture.length === 0 || photos.length === 0) return [...picture, ...photos];
  return [{ kind: 'columns', columns: [picture, photos], isFirstWide: true }];
}

function photosOf(photos: readonly Photo[], language: Language): Block[] {
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

function namesOf(told: readonly Told[]): string[] {
  return [...new Set(told.flatMap(({ judged }) => judged.name ?? []))];
}
