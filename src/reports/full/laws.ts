import { significant } from '../../quantity/format.ts';
import type { Goodness } from '../../result/goodness.ts';
import type { RegressionResult } from '../../result/regression.ts';
import { type Block, paragraph, records } from '../document/blocks.ts';
import { named } from '../text/page.ts';
import type { Language } from '../words/language.ts';
import type { Section } from './section.ts';

/** How the laws of strength compare on the drops, and how the protocol's fits level by level, where that was asked. */
export function laws(found: Goodness | null, language: Language): Section {
  const { laws: words, law } = language.words;
  if (found === null) return { heading: words.heading, blocks: [] };
  const { laws: all, without, grouped, why, caveat } = found;
  const table: Block = {
    kind: 'table',
    caption: words.heading,
    columns: [
      { head: words.law },
      { head: words.logLikelihood, align: 'right' },
      { head: 'AIC', align: 'right' },
      { head: words.weight, align: 'right' },
    ],
    rows: all.map(({ distribution, logLikelihood, aic, weight }) => [
      { text: law(distribution) },
      ...[logLikelihood, aic, weight].map((value) => ({ text: language.number(value.toFixed(2)) })),
    ]),
  };
  return {
    heading: words.heading,
    blocks: [
      ...(all.length === 0 ? [] : [table]),
      ...(grouped === null ? [] : [levelByLevel(grouped, language)]),
      ...without.map(({ distribution, why: reason }) =>
        paragraph(`${law(distribution)}: ${language.record(reason).text}`, 'small'),
      ),
      ...records(
        [why, grouped?.why ?? null, caveat].filter((text) => text !== null),
        language,
      ),
    ],
  };
}

function levelByLevel(
  { distribution, deviance, pearson, degrees, pDeviance, pPearson }: NonNullable<Goodness['grouped']>,
  language: Language,
): Block {
  const { laws: words, law } = language.words;
  const row = (name: string, value: number, p: number | null) => [
    { text: name },
    { text: language.number(significant(value, 3)) },
    { text: String(degrees) },
    { text: p === null ? '—' : language.number(significant(p, 2)) },
  ];
  const caption = words.levels(law(distribution));
  return {
    kind: 'table',
    caption,
    columns: [
      { head: caption },
      { head: words.statistic, align: 'right' },
      { head: words.degrees, align: 'right' },
      { head: 'p', align: 'right' },
    ],
    rows: [row(words.deviance, deviance, pDeviance), row(words.pearson, pearson, pPearson)],
  };
}

/** Effects of conditions on the strength with their likelihood-ratio tests, where the protocol asks for them. */
export function regression(found: RegressionResult | null, language: Language): Section {
  const { regression: words, laws: tests, items } = language.words;
  if (found === null) return { heading: words.heading, blocks: [] };
  if (found.why !== null) {
    const why = language.record(found.why);
    return { heading: words.heading, blocks: [{ kind: 'paragraph', ...why, text: words.notDone(why.text) }] };
  }
  const unit = found.unit === '1' ? 'ln E' : found.unit;
  const say = (value: number, digits: number) => language.number(significant(value, digits));
  return {
    heading: words.heading,
    blocks: [
      {
        kind: 'table',
        caption: words.effect,
        columns: [
          { head: words.effect },
          { head: items.value, align: 'right' },
          { head: items.standardError, align: 'right' },
        ],
        rows: found.effects.map(({ name, value, standardError, per }) => [
          { text: language.words.channel(named(name)) },
          { text: `${say(value, 3)} ${per === null ? unit : words.per(unit, per)}` },
          { text: say(standardError, 2) },
        ]),
      },
      {
        kind: 'table',
        caption: words.test,
        columns: [
          { head: words.test },
          { head: tests.statistic, align: 'right' },
          { head: tests.degrees, align: 'right' },
          { head: 'p', align: 'right' },
        ],
        rows: found.tests.map(({ term, statistic, degrees, p }) => [
          { text: language.words.channel(named(term)) },
          { text: statistic === null ? '—' : language.number(statistic.toFixed(2)) },
          { text: degrees === null ? '—' : String(degrees) },
          { text: p === null ? '—' : say(p, 2) },
        ]),
      },
      ...records([...found.tests.flatMap(({ why }) => why ?? []), ...found.notes], language),
    ],
  };
}
