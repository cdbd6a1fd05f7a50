import { problemLine } from '../../problem/problem.ts';
import { percent } from '../../quantity/amount.ts';
import { decimalsFor, significant } from '../../quantity/format.ts';
import type { MeasuredComparison, MeasuredPair } from '../../result/measured-comparison.ts';
import { marginSentence } from '../comparison/words.ts';
import { named, pageOf, paragraph, section, sentence, type TextOptions } from '../text/page.ts';
import { table } from '../text/table.ts';

/** Constructions by a measured quantity, for people: the differences in words, the tests, the layout. */
export function measuredText(result: MeasuredComparison, options: TextOptions): string {
  const page = pageOf(options);
  const { samples, pairs, refused, factors, overall, blocked, groups, notes, unread, quantity } = result;
  const list = (lines: readonly string[]) => lines.flatMap((line) => paragraph(page, line, 2, 4));
  const name = (place: number) => named(samples[place]!.label);
  const head =
    refused.length > 0
      ? ['Comparison refused.', ...refused.map(sentence)]
      : pairs.map((pair) => sentence(pairSentence(result, pair)));
  const [opening, ...rest] = head;
  const number = (value: number | null, least = 0.001) =>
    value === null ? '' : value !== 0 && Math.abs(value) < least ? '< 0.001' : value.toFixed(3);
  const of = (state: string) =>
    factors.filter((factor) => factor.state === state).map((factor) => named(factor.name));
  const put = factors.filter(({ despite }) => despite !== null);
  const rows = pairs.flatMap((pair) => [
    [`${name(pair.second)} less ${name(pair.first)}`, '', '', ''],
    ...testsOf(pair).map(([test, found]) => [
      test,
      withLimits(found),
      number(found.p),
      test === 'one spread, Tukey limits'
        ? number(pair.common!.tukey)
        : test === deciding(pair)
          ? number(pair.holm)
          : '',
    ]),
  ]);
  const effects = [
    ...overall.map(({ spreads, f, p, degrees, below }) => [
      `all equal, ${spreads === 'common' ? 'one spread' : 'own spreads (Welch)'}`,
      f === null ? '' : significant(f, 4),
      `${degrees}, ${Number(below.toFixed(1))}`,
      number(p),
    ]),
    ...blocked
      .filter(({ f }) => f !== null)
      .map(({ name: what, f, p, degrees }) => [
        `${named(what)}, in blocks`,
        significant(f!, 4),
        String(degrees),
        number(p),
      ]),
  ];
  const lines = [
    ...paragraph(page, opening!, 0),
    ...list(rest),
    ...section(
      page,
      `Means of ${named(quantity)}${result.unit === null ? '' : `, ${result.unit}`}`,
      table(
        page,
        [
          { head: 'construction', align: 'left', least: 12 },
          { head: 'tyres', align: 'right' },
          { head: 'mean', align: 'right' },
          { head: 'std. deviation', align: 'right' },
        ],
        samples.map(({ label, n, mean, standardDeviation }) => [
          named(label),
          String(n),
          significant(mean, 5),
          standardDeviation === null ? '' : significant(standardDeviation, 3),
        ]),
      ),
    ),
    ...section(
      page,
      `Differences, ${percent(result.confidence)} limits`,
      rows.length === 0
        ? []
        : table(
            page,
            [
              { head: '', align: 'left', least: 20 },
              { head: 'difference', align: 'right', least: 12 },
              { head: 'p', align: 'right' },
              { head: 'adjusted p', align: 'right' },
            ],
            rows,
          ),
    ),
    ...section(
      page,
      'All constructions, and blocks',
      effects.length === 0
        ? []
        : table(
            page,
            [
              { head: '', align: 'left', least: 20 },
              { head: 'F', align: 'right' },
              { head: 'degrees', align: 'right' },
              { head: 'p', align: 'right' },
            ],
            effects,
          ),
    ),
    ...section(
      page,
      'Not told apart, smallest first',
      samples.length > 2 ? list(groups.map((group) => group.map(name).join(', '))) : [],
    ),
    ...section(page, 'Not read', list(unread.flatMap(({ problems }) => problems.map(problemLine)))),
    ...section(page, 'Not shown to be equal (recorded for one or none)', list(joined(of('unknown')))),
    ...section(
      page,
      'Put aside by the reader',
      list(put.map(({ name: factor, despite }) => `${named(factor)}; despite: ${named(despite!)}`)),
    ),
    ...section(page, 'Declared', list(joined(of('declared')))),
    ...section(page, 'Notes', list(notes.map(sentence))),
  ];
  return `${lines.join('\n')}\n`;
}

function joined(names: readonly string[]): string[] {
  return names.length === 0 ? [] : [names.join(', ')];
}

type Shown = { readonly value: number; readonly lower: number; readonly upper: number; readonly p: number };

function testsOf({ separate, common, paired }: MeasuredPair): (readonly [string, Shown])[] {
  return [
    ...(paired === null ? [] : [['pairs', paired] as const]),
    ...(separate === null ? [] : [['own spreads (Welch)', separate] as const]),
    ...(common === null ? [] : [['one spread, Tukey limits', common] as const]),
  ];
}

function deciding({ paired }: MeasuredPair): string {
  return paired === null ? 'own spreads (Welch)' : 'pairs';
}

function withLimits({ value, lower, upper }: Omit<Shown, 'p'>): string {
  const decimals = decimalsFor((upper - lower) / 4);
  return `${value.toFixed(decimals)} (${lower.toFixed(decimals)} to ${upper.toFixed(decimals)})`;
}

function pairSentence(
  { samples, quantity, unit, confidence }: MeasuredComparison,
  pair: MeasuredPair,
): string {
  const [a, b] = [named(samples[pair.first]!.label), named(samples[pair.second]!.label)];
  const found = pair.paired ?? pair.separate;
  if (found === null) return `${b} against ${a}: ${pair.why}`;
  const by = pair.paired === null ? '' : ` over ${pair.paired.pairs} pairs`;
  const size = `${b} less ${a}: ${withLimits(found)}${unit === null ? '' : ` ${unit}`} of ${named(quantity)}${by}, ${percent(confidence)} limits`;
  const apart = pair.toldApart ? 'told apart' : 'not told apart';
  const least =
    pair.smallestDifference === null
      ? ''
      : `; a difference of ${significant(pair.smallestDifference, 2)} would have been found four times in five`;
  const margin =
    pair.nonInferiority === null || pair.first !== 0
      ? ''
      : `. ${sentence(marginSentence(b, a, pair.nonInferiority, confidence))}`;
  return `${size}; ${apart}${least}${margin}`;
}
