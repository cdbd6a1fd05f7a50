import { upTo } from '../../quantity/format.ts';
import type { Estimate } from '../../result/estimate.ts';
import type { ReportedTest, ReportedTyre } from '../../result/report.ts';
import { gramsBesideJoules } from '../content/grams.ts';
import { criteria, drops, massOfDrops, response, tyres } from '../content/pictures.ts';
import { type Subject, subjectsOf } from '../content/subject.ts';
import { type Block, figure, heading, paragraph } from '../document/blocks.ts';
import { named } from '../text/page.ts';
import { rangeText, share, valueText } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';
import type { Section } from './section.ts';

/** More tyres than this are counted only. */
const MOST_TYRES = 200;

/** Pictures, estimates, and what is known of each tyre. */
export function results(test: ReportedTest, id: string, language: Language): Section[] {
  const { headings } = language.words;
  const subjects = subjectsOf([test]);
  const isRising = test.result.protocol.method === 'rising-height';
  const pictures = subjects.flatMap((subject, i): Block[] => {
    const own = `${id}s${i + 1}`;
    const repeated = subject.sample.tyres.some((tyre) => tyre.drops > 1);
    return [
      ...(subjects.length > 1 ? [heading(subject.name ?? `${i + 1}`, 3)] : []),
      ...figure(drops(subject, `${own}-drops`, language)),
      ...figure(response(subject, `${own}-response`, language)),
      ...(isRising || repeated ? figure(tyres(subject, `${own}-tyres`, language, 40)) : []),
      ...figure(criteria(subject, `${own}-criteria`, language)),
      ...figure(massOfDrops(subject, `${own}-mass`, language)),
      ...gramsBesideJoules([subject], language),
    ];
  });
  return [
    { heading: headings.results, blocks: pictures },
    {
      heading: headings.estimates,
      blocks: subjects.flatMap((subject) => estimatesOf(subject, subjects, language)),
    },
    { heading: headings.perTyre, blocks: subjects.flatMap((subject) => perTyre(subject, language)) },
  ];
}

function estimatesOf(subject: Subject, subjects: readonly Subject[], language: Language): Block[] {
  const { tyres: tyresOf, drops: dropsOf } = language.words;
  return [
    ...(subjects.length > 1 ? [heading(subject.name ?? '—', 3)] : []),
    ...estimatesTable(
      subject.estimates.filter((estimate) => !isExclusionVariant(estimate)),
      (of) => `${tyresOf(of.specimens)}, ${dropsOf(of.drops)}`,
      language,
    ),
  ];
}

/** Estimates with their intervals, methods and evidence; below, what binds them or is wanting, in the record's words. */
export function estimatesTable(
  own: readonly (Estimate & { readonly at?: number })[],
  evidence: (estimate: Estimate) => string,
  language: Language,
): Block[] {
  const { headings, items, method, quantity } = language.words;
  const whys = [...new Set(own.flatMap(({ why }) => (why === null ? [] : [why])))];
  const name = (of: Estimate) =>
    quantity(of, of.probability === undefined ? '' : share(language, of.probability)) +
    (of.variant === undefined ? '' : ` (${language.words.variant(of.variant)})`);
  return [
    {
      kind: 'table',
      caption: headings.estimates,
      columns: [
        { head: items.quantity },
        { head: items.value, align: 'right' },
        { head: items.interval },
        { head: items.method },
        { head: items.evidence },
      ],
      rows: own.map((estimate) => [
        { text: name(estimate) },
        { text: valueText(language, estimate, 2) ?? '—' },
        { text: intervalOf(estimate, language) },
        {
          text:
            method(estimate.method) +
            (estimate.interval === null ? '' : `, ${method(estimate.interval.method)}`),
        },
        { text: evidence(estimate) },
      ]),
    },
    ...whys.map((text): Block => ({ kind: 'paragraph', ...language.record(text), tone: 'small' })),
  ];
}

/** Told in their own section. */
export function isExclusionVariant({ variant }: Estimate): boolean {
  return variant?.startsWith('with-') === true && variant.endsWith('exclusions');
}

export function intervalOf(estimate: Estimate, language: Language): string {
  const range = rangeText(language, estimate, 2);
  return range === null || estimate.interval === null
    ? '—'
    : `${share(language, estimate.interval.level)}: ${range}`;
}

function perTyre({ sample }: Subject, language: Language): Block[] {
  const { headings, items, charts } = language.words;
  const shown = sample.tyres.slice(0, MOST_TYRES);
  const rest = sample.tyres.length - shown.length;
  if (shown.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: headings.perTyre,
      columns: [
        { head: items.specimen },
        { head: items.tyreMass, align: 'right' },
        { head: items.drops, align: 'right' },
        { head: items.strength },
      ],
      rows: shown.map((tyre) => [
        { text: named(tyre.specimen) },
        { text: tyre.mass === null ? '—' : `${language.number(upTo(tyre.mass, 1))} g` },
        { text: String(tyre.drops) },
        { text: strengthText(tyre, language) },
      ]),
    },
    ...(rest > 0 ? [paragraph(charts.more(rest), 'small')] : []),
  ];
}

function strengthText({ lower, upper }: ReportedTyre, language: Language): string {
  const { words } = language;
  const say = (value: number) => `${language.number(value.toPrecision(3))} J`;
  if (lower !== null && upper !== null) return words.between(say(lower), say(upper));
  if (lower !== null) return words.from(say(lower));
  return upper === null ? words.open : words.upTo(say(upper));
}
