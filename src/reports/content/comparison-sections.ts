import { plain } from '../../quantity/amount.ts';
import { significant } from '../../quantity/format.ts';
import type { ComparisonResult, NonInferiority } from '../../result/comparison.ts';
import { massEnergyFigure } from '../charts/mass-energy.ts';
import { type Block, figure, heading, list, paragraph, records } from '../document/blocks.ts';
import { named } from '../text/page.ts';
import { share } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';
import { valueAndRange } from './comparison.ts';

type Level = 2 | 3;

/**
 * What a comparison has beside its ratios: what goes together with the construction, margins, references of the day,
 * covariates, the log-rank test, masses, and verdicts that rest on one tyre; each only where there is something to tell.
 */
export function sectionBlocks(
  result: ComparisonResult,
  id: string,
  language: Language,
  level: Level = 2,
): Block[] {
  const { comparison: words } = language.words;
  const section = (title: string, blocks: readonly Block[]): Block[] =>
    blocks.length === 0 ? [] : [heading(title, level), ...blocks];
  return [
    ...section(words.aliasing, aliasing(result, language)),
    ...section(words.margin, list(margins(result, language))),
    ...section(words.relative, relative(result, language)),
    ...adjusted(result, language, section),
    ...section(words.logRank, logRanks(result, language)),
    ...section(words.tradeOff[result.kind], tradeOff(result, id, language)),
    ...section(words.verdictInfluence, list(verdicts(result, language))),
    ...section(
      words.unread,
      list(
        result.unread.map(
          ({ path, problems }) => `${named(path)}: ${problems.map(({ message }) => message).join('; ')}`,
        ),
      ),
    ),
  ];
}

function nameOf({ samples }: ComparisonResult, place: number): string {
  return named(samples[place]!.label);
}

function aliasing(result: ComparisonResult, language: Language): Block[] {
  const { comparison: words, items } = language.words;
  if (result.aliasing.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: words.aliasing,
      columns: [{ head: words.factor }, { head: words.state }, { head: items.reason }],
      rows: result.aliasing.map(({ factor, state, why }) => [
        { text: language.words.channel(named(factor)) },
        { text: words.aliasingStates[state] },
        language.record(why),
      ]),
    },
  ];
}

function margins(result: ComparisonResult, language: Language): string[] {
  const say = (what: number, against: number, found: NonInferiority) =>
    marginSentence(nameOf(result, what), nameOf(result, against), found, language);
  return [
    ...result.pairs.flatMap(({ first, second, nonInferiority }) =>
      nonInferiority === null || first !== 0 ? [] : say(second, first, nonInferiority),
    ),
    ...result.relative.flatMap(({ sample, reference, nonInferiority }) =>
      nonInferiority === null || (reference === 0 && result.pairs.length > 0)
        ? []
        : say(sample, reference, nonInferiority),
    ),
  ];
}

function marginSentence(what: string, against: string, found: NonInferiority, language: Language): string {
  const { comparison: words } = language.words;
  const margin = share(language, found.margin);
  const bound = (ratio: number | null) => (ratio === null ? '—' : language.number(ratio.toFixed(3)));
  if (found.verdict === 'undecided') return words.marginOpen({ what, against, margin });
  return found.verdict === 'not-inferior'
    ? words.marginHolds({ what, against, margin, bound: bound(found.lower) })
    : words.marginBroken({ what, against, margin, bound: bound(found.upper) });
}

function relative(result: ComparisonResult, language: Language): Block[] {
  const { comparison: words } = language.words;
  const rows = [
    ...result.relative.map(({ sample, reference, ratio }) => ({
      name: `${nameOf(result, sample)} / ${nameOf(result, reference)}`,
      ratio,
    })),
    ...result.ratiosOfRatios.map(({ first, second, ...ratio }) => ({
      name: words.eachByReference(`${nameOf(result, second)} / ${nameOf(result, first)}`),
      ratio,
    })),
  ];
  if (rows.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: words.relative,
      columns: [{ head: words.pair }, { head: `${words.ratio} (${share(language, result.confidence)})` }],
      rows: rows.map(({ name, ratio }) => [{ text: name }, { text: valueAndRange(ratio, language) }]),
    },
    ...records([...new Set(rows.flatMap(({ ratio }) => ratio.why ?? []))], language),
  ];
}

function adjusted(
  { adjusted: found, samples }: ComparisonResult,
  language: Language,
  section: (title: string, blocks: readonly Block[]) => Block[],
): Block[] {
  const { comparison: words } = language.words;
  if (found === null) return [];
  const title = words.adjusted(
    language.words.list(found.covariates.map((name) => language.words.channel(named(name)))),
  );
  if (found.why !== null) return section(title, [{ kind: 'paragraph', ...language.record(found.why) }]);
  const say = (value: number) => language.number(significant(value, 3));
  const { test } = found;
  return section(title, [
    {
      kind: 'table',
      caption: title,
      columns: [
        { head: words.pair },
        { head: words.difference(found.unit === '1' ? 'ln' : found.unit) },
        { head: words.ratio, align: 'right' },
      ],
      rows: found.differences.map(({ label, value, lower, upper, ratio }) => [
        { text: `${named(label)} − ${named(samples[0]!.label)}` },
        { text: `${say(value)} (${language.words.between(say(lower), say(upper))})` },
        { text: ratio === null ? '—' : language.number(ratio.toFixed(3)) },
      ]),
    },
    ...(test === null
      ? []
      : [
          paragraph(
            words.allEqual({
              statistic: language.number(test.statistic.toFixed(2)),
              degrees: test.degrees,
              p: say(test.p),
            }),
          ),
        ]),
  ]);
}

function logRanks(result: ComparisonResult, language: Language): Block[] {
  const { comparison: words, laws } = language.words;
  const rows = result.pairs.flatMap(({ first, second, logRank }) =>
    logRank === null ? [] : [{ pair: `${nameOf(result, second)} / ${nameOf(result, first)}`, logRank }],
  );
  if (rows.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: words.logRank,
      columns: [
        { head: words.pair },
        { head: laws.statistic, align: 'right' },
        { head: 'p', align: 'right' },
      ],
      rows: rows.map(({ pair, logRank: { statistic, p } }) => [
        { text: pair },
        { text: statistic === null ? '—' : language.number(statistic.toFixed(2)) },
        { text: p === null ? '—' : language.number(significant(p, 2)) },
      ]),
    },
    ...records([...new Set(rows.flatMap(({ logRank }) => logRank.why ?? []))], language),
  ];
}

/** The picture of medians over masses, and who is lighter and better. */
function tradeOff(result: ComparisonResult, id: string, language: Language): Block[] {
  const { comparison: words, charts, items } = language.words;
  const { tradeOff: all, kind, unit } = result;
  if (all.length === 0) return [];
  const points = all.map(({ sample, mass, median }) => ({
    name: nameOf(result, sample),
    mass,
    energy: median,
  }));
  const title = kind === 'impact' ? charts.medianEnergy : charts.medianLife;
  return [
    ...figure(massEnergyFigure(points, title, id, language, unit)),
    {
      kind: 'table',
      caption: words.tradeOff[kind],
      columns: [
        { head: items.construction },
        { head: items.tyreMass, align: 'right' },
        { head: items.value, align: 'right' },
        { head: words.state },
      ],
      rows: all.map(({ sample, mass, median, dominatedBy, isToldApart }) => [
        { text: nameOf(result, sample) },
        { text: `${language.number(plain(Number(mass.toPrecision(4))))} g` },
        { text: `${language.number(significant(median, 3))} ${unit}` },
        {
          text:
            dominatedBy.length === 0
              ? words.frontier
              : words.dominated({
                  names: language.words.list(dominatedBy.map((place) => nameOf(result, place))),
                  isToldApart,
                }),
        },
      ]),
    },
  ];
}

function verdicts(result: ComparisonResult, language: Language): string[] {
  const { comparison: words, verdict } = language.words;
  const word = (name: string) => (verdict as Readonly<Record<string, string>>)[name] ?? named(name);
  return result.verdictInfluence.map(({ sample, specimen, criterion, whole, without }) =>
    words.turns({
      specimen: named(specimen),
      sample: nameOf(result, sample),
      criterion: named(criterion),
      whole: word(whole),
      without: word(without),
    }),
  );
}
