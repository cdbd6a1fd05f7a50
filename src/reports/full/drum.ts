import { plain } from '../../quantity/amount.ts';
import { upTo } from '../../quantity/format.ts';
import type { ReportedDrum } from '../../result/report.ts';
import { judgementOf, nextSteps } from '../content/answer.ts';
import { criteriaTable } from '../content/criteria-table.ts';
import {
  drumCautions,
  drumFinding,
  drumNotShown,
  drumSubject,
  drumUncertainty,
} from '../content/drum-answer.ts';
import { lives, timelines, wear, weibull } from '../content/drum-pictures.ts';
import { type Block, figure, heading, list, paragraph, records as recorded } from '../document/blocks.ts';
import { named, versioned } from '../text/page.ts';
import { share } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';
import { identification } from './beginning.ts';
import { checklist } from './checklist.ts';
import { conformity, records, uncertainty } from './closing.ts';
import { deviations, notes } from './departures.ts';
import { items } from './method.ts';
import { estimatesTable } from './results.ts';
import type { Section } from './section.ts';

const MOST = { criteria: 100, lives: 200 } as const;

/** The sections of a drum test, in the order of those of a drop test. */
export function drumSections(test: ReportedDrum, id: string, language: Language, version: string): Section[] {
  const { headings, tyres } = language.words;
  const subject = drumSubject(test);
  return [
    answer(test, language),
    identification(test, language, version),
    items(test, language),
    { heading: headings.method, blocks: schedule(test, language) },
    { heading: headings.conditions, blocks: channels(test, language) },
    {
      heading: headings.results,
      blocks: [
        ...figure(lives(test, `${id}-lives`, language, 40)),
        ...figure(weibull(test, `${id}-weibull`, language)),
        ...figure(wear(test, `${id}-wear`, language)),
        ...timelines(test, `${id}-time`, language).flatMap(figure),
      ],
    },
    {
      heading: headings.estimates,
      blocks:
        test.result.estimates.length === 0
          ? []
          : estimatesTable(test.result.estimates, (of) => tyres(of.specimens), language),
    },
    { heading: headings.perTyre, blocks: perTyre(test, language) },
    { heading: headings.deviations, blocks: deviations(test, language) },
    { heading: headings.notes, blocks: notes(test, language) },
    uncertainty(test, language),
    conformity(test, language),
    ...records(test, drumCautions(subject, language), language, version),
    checklist(test, test.timelines.length > 0, language),
  ];
}

function answer(test: ReportedDrum, language: Language): Section {
  const { headings, items: words } = language.words;
  const subject = drumSubject(test);
  const judged = judgementOf(subject, language);
  const verdict: Block[] =
    judged === null || subject.verdict === null
      ? []
      : [{ kind: 'verdict', verdict: subject.verdict, text: judged }];
  return {
    heading: headings.answer,
    blocks: [
      { kind: 'terms', rows: [{ term: words.question, text: test.request.question }] },
      paragraph(drumFinding(subject, language), 'lead'),
      paragraph(drumUncertainty(subject, language).join(' ')),
      ...verdict,
      ...criteriaTable(subject.criteria, MOST.criteria, language),
      heading(headings.next, 3),
      ...list(nextSteps(subject, language)),
      heading(headings.notShown, 3),
      ...list(drumNotShown(subject, language)),
    ],
  };
}

/** The schedule, planned and run, with the ledger of its kilometres. */
function schedule({ result }: ReportedDrum, language: Language): Block[] {
  const { headings, items: words, law } = language.words;
  const { protocol, distance, defaults } = result;
  const km = (value: number | null) => (value === null ? '—' : `${language.number(upTo(value, 2))} km`);
  const hours = (value: number | null) =>
    value === null ? '' : `${language.number(upTo(value / 3600, 1))} h`;
  return [
    {
      kind: 'terms',
      rows: [
        { term: words.protocol, text: versioned(protocol.id, protocol.version) },
        { term: words.lifeLaw, text: law(protocol.distribution) },
      ],
    },
    {
      kind: 'table',
      caption: headings.method,
      columns: [
        { head: words.block },
        { head: words.planned, align: 'right' },
        { head: words.logged, align: 'right' },
        { head: words.atCondition, align: 'right' },
        { head: words.excluded, align: 'right' },
        { head: words.unverified, align: 'right' },
      ],
      rows: [
        ...result.schedule.map(({ block, planned, logged, distance: own }) => [
          { text: named(block) },
          { text: planned.distance === null ? hours(planned.time) : km(planned.distance) },
          { text: [km(logged.distance), hours(logged.time)].filter((text) => text !== '').join(', ') },
          { text: km(own.atCondition) },
          { text: km(own.excluded) },
          { text: km(own.unverified) },
        ]),
        [
          { text: 'Σ' },
          { text: '' },
          { text: km(distance.logged) },
          { text: km(distance.atCondition) },
          { text: km(distance.excluded) },
          { text: km(distance.unverified) },
        ],
      ],
    },
    ...(defaults.length === 0 ? [] : [paragraph(`${words.assumed}:`), ...recorded(defaults, language)]),
  ];
}

function channels({ result }: ReportedDrum, language: Language): Block[] {
  const { headings, items: words, between } = language.words;
  const say = (value: number) => language.number(upTo(value, 3));
  const rows = result.schedule.flatMap(({ block, channels: own }) =>
    own.map(({ channel, unit, inTolerance, mean, min, max }) => [
      { text: named(block) },
      { text: language.words.channel(named(channel)), isWhole: true },
      { text: min === null || max === null ? words.notLogged : `${between(say(min), say(max))} ${unit}` },
      { text: mean === null ? '—' : `${language.number(plain(Number(mean.toPrecision(4))))} ${unit}` },
      { text: inTolerance === null ? '—' : share(language, Math.round(inTolerance * 1e4) / 1e4) },
    ]),
  );
  if (rows.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: headings.conditions,
      columns: [
        { head: words.block },
        { head: words.condition },
        { head: words.logged },
        { head: words.mean, align: 'right' },
        { head: words.inTolerance, align: 'right' },
      ],
      rows,
    },
  ];
}

function perTyre({ result }: ReportedDrum, language: Language): Block[] {
  const { words } = language;
  const say = (value: number) => `${language.number(upTo(value, 1))} km`;
  const life = (lower: number | null, upper: number | null): string => {
    if (upper === null) return words.from(say(lower ?? 0));
    return lower === upper ? say(upper) : words.between(say(lower ?? 0), say(upper));
  };
  const shown = result.lives.slice(0, MOST.lives);
  if (shown.length === 0) return [];
  const rest = result.lives.length - shown.length;
  return [
    {
      kind: 'table',
      caption: words.headings.perTyre,
      columns: [{ head: words.items.specimen }, { head: words.items.life }, { head: words.items.cause }],
      rows: shown.map(({ specimen, lower, upper, cause }) => [
        { text: named(specimen) },
        { text: life(lower, upper) },
        { text: cause ?? '—' },
      ]),
      below: rest > 0 ? words.items.more(rest) : undefined,
    },
  ];
}
