import type { ListedDeviation } from '../../conformance/deviation.ts';
import { height } from '../../quantity/format.ts';
import type { ReportedRun, ReportedTest } from '../../result/report.ts';
import { subjectsOf } from '../content/subject.ts';
import { type Block, paragraph, records } from '../document/blocks.ts';
import { named } from '../text/page.ts';
import { share, valueText } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';
import { intervalOf, isExclusionVariant } from './results.ts';
import type { Section } from './section.ts';

const MOST = { deviations: 200, exclusions: 100, notes: 60, amendments: 100 } as const;

/** What was not done as the protocol says, what was left out and what that does, and what was amended. */
export function departures(test: ReportedTest, language: Language): Section[] {
  const { headings } = language.words;
  return [
    { heading: headings.deviations, blocks: deviations(test, language) },
    { heading: headings.exclusions, blocks: exclusions(test, language) },
    { heading: headings.withAndWithout, blocks: withAndWithout(test, language) },
    { heading: headings.amendments, blocks: amendments(test, language) },
    { heading: headings.notes, blocks: notes(test, language) },
  ];
}

/** What was met on the way and is no departure. */
export function notes({ result }: ReportedRun, language: Language): Block[] {
  return records(result.notes.slice(0, MOST.notes), language);
}

export function deviations({ result }: ReportedRun, language: Language): Block[] {
  const { items, texts, status, severity, headings } = language.words;
  const { deviations: all, status: found, why } = result.conformance;
  const stated = paragraph(status[found]);
  const reason: Block[] = why === null ? [] : [{ kind: 'paragraph', ...language.record(why) }];
  if (all.length === 0) return [paragraph(texts.noDeviation), ...reason];
  const shown = all.slice(0, MOST.deviations);
  return [
    stated,
    ...reason,
    {
      kind: 'table',
      caption: headings.deviations,
      columns: [{ head: items.code }, { head: items.severity }, { head: items.place2 }, { head: items.what }],
      rows: shown.map((deviation) => [
        { text: deviation.code, isWhole: true },
        { text: severity[deviation.severity], isWhole: true },
        { text: placeOf(deviation, language) },
        language.deviation(deviation),
      ]),
      below: all.length > shown.length ? items.more(all.length - shown.length) : undefined,
    },
  ];
}

function placeOf({ line, drop, specimen, firstLine, lastLine }: ListedDeviation, language: Language): string {
  const { items } = language.words;
  const parts = [
    specimen === null ? null : named(specimen),
    drop === null ? null : items.dropNumber(drop),
    firstLine === undefined || lastLine === undefined
      ? line === null
        ? null
        : items.line(line)
      : items.line(`${firstLine}–${lastLine}`),
  ].filter((part) => part !== null);
  return parts.length === 0 ? '—' : parts.join(', ');
}

function exclusions({ exclusions: all }: ReportedTest, language: Language): Block[] {
  const { items, texts, headings } = language.words;
  if (all.length === 0) return [paragraph(texts.noExclusion)];
  const shown = all.slice(0, MOST.exclusions);
  return [
    {
      kind: 'table',
      caption: headings.exclusions,
      columns: [
        { head: items.drop, align: 'right' },
        { head: items.specimen },
        { head: items.height, align: 'right' },
        { head: items.reason },
      ],
      rows: shown.map(({ drop, specimen, height: at, because, remark }) => [
        { text: String(drop) },
        { text: named(specimen) },
        { text: language.number(height(at)) },
        { text: reasonOf(because, remark, language) },
      ]),
      below: all.length > shown.length ? items.more(all.length - shown.length) : undefined,
    },
  ];
}

function reasonOf(because: string | null, remark: string | null, language: Language): string {
  const title = because === null ? null : language.titleOf(because);
  const reason =
    because === null
      ? language.words.items.noReason
      : title === null
        ? named(because)
        : `${because}, ${title}`;
  return remark === null ? reason : `${reason}: ${remark}`;
}

/** The headline without the drops left out, and with them, where the result has both. */
function withAndWithout(test: ReportedTest, language: Language): Block[] {
  const { items, texts, headings, quantity } = language.words;
  if (test.exclusions.length === 0) return [];
  const rows = subjectsOf([test]).flatMap(({ estimates, name }) =>
    estimates.filter(isExclusionVariant).flatMap((other) => {
      const twin = estimates.find(
        (own) =>
          own.variant === undefined &&
          own.quantity === other.quantity &&
          own.method === other.method &&
          own.probability === other.probability,
      );
      if (twin === undefined) return [];
      const what = quantity(other, other.probability === undefined ? '' : share(language, other.probability));
      const say = (of: typeof other) => `${valueText(language, of, 2) ?? '—'} (${intervalOf(of, language)})`;
      return [
        [{ text: name === null ? what : `${what}, ${name}` }, { text: say(twin) }, { text: say(other) }],
      ];
    }),
  );
  if (rows.length === 0) return [paragraph(texts.notReestimated)];
  return [
    {
      kind: 'table',
      caption: headings.withAndWithout,
      columns: [{ head: items.quantity }, { head: items.without }, { head: items.with }],
      rows,
    },
  ];
}

function amendments({ result }: ReportedTest, language: Language): Block[] {
  const { items, headings } = language.words;
  const all = result.amendments;
  if (all.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: headings.amendments,
      columns: [{ head: items.place2 }, { head: items.amended }, { head: items.reason }, { head: items.by }],
      rows: all
        .slice(0, MOST.amendments)
        .map(({ specimen, drop, logLine, what, old, new: changed, reason, by, on }) => [
          {
            text: [named(specimen), drop === null ? null : items.dropNumber(drop), items.line(logLine)]
              .filter((part) => part !== null)
              .join(', '),
          },
          { text: `${named(what)}: ${named(old)} → ${named(changed)}` },
          { text: reason },
          { text: `${by}, ${on}` },
        ]),
      below: all.length > MOST.amendments ? items.more(all.length - MOST.amendments) : undefined,
    },
  ];
}
