import { amount, fixed } from '../../quantity/amount.ts';
import { decimalsFor, significant } from '../../quantity/format.ts';
import type { UncertaintyLine, UncertaintyResult } from '../../result/uncertainty.ts';
import { type Block, heading, paragraph, records } from '../document/blocks.ts';
import { named } from '../text/page.ts';
import { share } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';

/** What the rig adds to the estimates, and its budget line by line. */
export function budget(found: UncertaintyResult, language: Language): Block[] {
  const { budget: words } = language.words;
  const { at, common, drop, whole, check, notes } = found;
  const joule = (value: number) => language.number(amount(value, 3, 'J'));
  const ends = ({ lower, upper }: { readonly lower: number; readonly upper: number }) =>
    language.number(`${language.words.between(fixed(lower, 2), fixed(upper, 2))} J`);
  return [
    paragraph(words.standard),
    ...carried(found, language),
    heading(words.heading, 3),
    linesTable(found.lines, language),
    paragraph(
      words.oneDrop({
        energy: language.number(amount(at.energy, 1, 'J')),
        height: amount(at.height, 0, 'mm'),
        common: joule(common.standardUncertainty),
        drop: joule(drop.standardUncertainty),
        whole: joule(whole.standardUncertainty),
        degrees: whole.degrees === null ? words.infinite : whole.degrees.toFixed(0),
      }),
    ),
    paragraph(
      words.drawn({
        agrees: check.agrees,
        drawn: ends(check.drawn),
        propagated: ends(check.propagated),
        trials: String(check.trials),
        seed: String(check.seed),
        tolerance: language.number(`${significant(check.tolerance, 1)} J`),
      }),
    ),
    ...records(notes, language),
  ];
}

function carried({ estimates }: UncertaintyResult, language: Language): Block[] {
  const { budget: words, items, quantity } = language.words;
  if (estimates.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: words.withRig,
      columns: [
        { head: items.quantity },
        { head: words.ofDrops, align: 'right' },
        { head: words.ofRig, align: 'right' },
        { head: words.combined, align: 'right' },
        { head: words.withRig },
      ],
      rows: estimates.map((entry) => {
        const decimals = decimalsFor(entry.combined);
        const say = (value: number) => language.number(amount(value, decimals, 'J'));
        const of = { quantity: entry.quantity, probability: entry.probability, unit: 'J' };
        return [
          { text: quantity(of, entry.probability === undefined ? '' : share(language, entry.probability)) },
          { text: say(entry.standardError) },
          { text: say(entry.common) },
          { text: say(entry.combined) },
          { text: rangeOf(entry.interval, decimals, language) },
        ];
      }),
    },
  ];
}

function rangeOf(
  interval: UncertaintyResult['estimates'][number]['interval'],
  decimals: number,
  language: Language,
): string {
  const { words } = language;
  if (interval === null) return '—';
  const { lower, upper, level } = interval;
  const say = (value: number) => language.number(fixed(value, decimals));
  const range =
    lower !== null && upper !== null
      ? `${words.between(say(lower), say(upper))} J`
      : lower !== null
        ? words.from(`${say(lower)} J`)
        : upper === null
          ? words.open
          : words.upTo(`${say(upper)} J`);
  return `${share(language, level)}: ${range}`;
}

function linesTable(lines: readonly UncertaintyLine[], language: Language): Block {
  const { budget: words, laws } = language.words;
  return {
    kind: 'table',
    caption: words.heading,
    columns: [
      { head: words.of },
      { head: words.source },
      { head: language.words.items.standardError, align: 'right' },
      { head: laws.degrees, align: 'right' },
      { head: words.scope },
      { head: words.adds, align: 'right' },
    ],
    rows: lines.map((line) => [
      { text: words.inputs[line.of] ?? named(line.of), isWhole: true },
      { text: line.source },
      { text: language.number(stated(line)) },
      { text: line.degrees === null ? words.infinite : language.number(significant(line.degrees, 3)) },
      { text: words.scopes[line.scope], isWhole: true },
      { text: language.number(amount(line.contribution, 3, 'J')) },
    ]),
  };
}

function stated({ standardUncertainty, unit }: UncertaintyLine): string {
  return unit === '1'
    ? `${significant(100 * standardUncertainty, 2)} %`
    : `${significant(standardUncertainty, 2)} ${unit}`;
}
