import { plain } from '../../quantity/amount.ts';
import { decimalsFor, significant } from '../../quantity/format.ts';
import type {
  ComparedPair,
  ComparisonResult,
  PercentileDifference,
  WithInterval,
} from '../../result/comparison.ts';
import { type ComparedConstruction, comparisonFigure } from '../charts/comparison.ts';
import type { Figure } from '../charts/figure.ts';
import { headlineOf } from '../comparison/words.ts';
import { type Block, type Cell, heading, list, paragraph, records } from '../document/blocks.ts';
import { named } from '../text/page.ts';
import { share } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';

/** More pairs, factors or tyres than these are counted only. */
const MOST = { pairs: 45, factors: 100, influence: 30 } as const;

/** What a comparison finds of one pair, and what its numbers can say beside. */
export interface ComparisonFinding {
  readonly finding: string;
  readonly standing: string;
}

/** The answer of a comparison: each pair in words with its interval, or that nothing is compared. */
export function comparisonFindings(result: ComparisonResult, language: Language): ComparisonFinding[] {
  if (result.refused.length > 0) return [{ finding: language.words.comparison.refused, standing: '' }];
  return result.pairs.map((pair) => ({
    finding: pairFinding(result, pair, language),
    standing: standing(pair, language),
  }));
}

/** The answer: the first pair at the top, the others below it; why there is none, up to so many reasons. */
export function comparisonAnswer(result: ComparisonResult, most: number, language: Language): Block[] {
  const [opening, ...others] = comparisonFindings(result, language);
  if (opening === undefined) return [];
  const shown = others.slice(0, most);
  const rest = others.length - shown.length;
  return [
    paragraph(opening.finding, 'lead'),
    ...(opening.standing === '' ? [] : [paragraph(opening.standing)]),
    ...records(result.refused.slice(0, most), language),
    ...list(shown.map(({ finding, standing: beside }) => `${finding} ${beside}`.trim())),
    ...(rest > 0 ? [paragraph(language.words.comparison.morePairs(rest), 'small')] : []),
  ];
}

/** `C-115@1 survives 18 % less energy than C-114@2: the 95 % interval is 14 to 21 % less, 30 tyres each.` */
function pairFinding(
  { kind, samples, confidence }: ComparisonResult,
  pair: ComparedPair,
  language: Language,
): string {
  const { comparison: words } = language.words;
  const [first, second] = [samples[pair.first]!, samples[pair.second]!];
  const { ratio } = headlineOf(pair);
  const names = { what: named(second.label), against: named(first.label) };
  const tyres =
    first.specimens === second.specimens
      ? words.each(first.specimens)
      : words.counts(second.specimens, first.specimens);
  if (ratio.value === null) return words.noRatio({ ...names, tyres });
  const of = {
    ...names,
    kind,
    tyres,
    level: share(language, confidence),
    range: changeRange(ratio, language),
  };
  return isNoChange(ratio.value)
    ? words.same(of)
    : words.survives({ ...of, change: change(ratio.value, language) });
}

/** What the numbers can say of the pair beside its ratio. */
function standing({ toldApart, smallestRatio }: ComparedPair, language: Language): string {
  const { comparison: words } = language.words;
  const found = toldApart === null ? '' : toldApart ? words.toldApart : words.notToldApart;
  const least =
    smallestRatio === null
      ? ''
      : words.smallest(language.number(`${significant(100 * (smallestRatio - 1), 2)} %`));
  return [found, least].filter((text) => text !== '').join(' ');
}

function changeRange({ lower, upper }: WithInterval, language: Language): string {
  const { comparison: words, between, open } = language.words;
  if (lower === null && upper === null) return open;
  if (lower === null) return words.atMost(change(upper!, language));
  if (upper === null) return words.atLeast(change(lower, language));
  if (upper <= 1) return between(size(upper, language), change(lower, language));
  if (lower >= 1) return between(size(lower, language), change(upper, language));
  return between(change(lower, language), change(upper, language));
}

/** `18 % less` for 0.82. */
function change(ratio: number, language: Language): string {
  const { less, more } = language.words.comparison;
  return (ratio < 1 ? less : more)(`${size(ratio, language)} %`);
}

function size(ratio: number, language: Language): string {
  const percent = 100 * Math.abs(ratio - 1);
  return percent >= 1 ? String(Math.round(percent)) : language.number(percent.toFixed(1));
}

function isNoChange(ratio: number): boolean {
  return 100 * Math.abs(ratio - 1) < 0.05;
}

/** Letters of the groups of each sample: those that share one are not told apart. */
export function groupLetters({ samples, groups }: ComparisonResult): (string | undefined)[] {
  const inOrder = groups.toSorted((a, b) => Math.min(...a) - Math.min(...b));
  return samples.map((_, i) => {
    const letters = inOrder.flatMap((group, g) =>
      group.includes(i) ? [String.fromCharCode(97 + (g % 26))] : [],
    );
    return letters.length === 0 ? undefined : letters.join('');
  });
}

/** The samples against the first, as shares of its median, with their intervals and groups. */
export function ratioFigure(result: ComparisonResult, id: string, language: Language): Figure | null {
  const [reference] = result.samples;
  if (reference === undefined || result.pairs.length === 0) return null;
  const letters = groupLetters(result);
  const rows = result.samples.map((sample, i): ComparedConstruction => {
    const own = i === 0 ? ONE : againstFirst(result, i);
    const percent = (ratio: number | null) => (ratio === null ? null : 100 * ratio);
    return {
      name: sample.label,
      value: percent(own.value),
      lower: percent(own.lower),
      upper: percent(own.upper),
      group: letters[i],
      reference: i === 0,
      isWhole: i === 0,
    };
  });
  const title = language.words.comparison.ofReference(result.kind, named(reference.label));
  return comparisonFigure(rows, { title, unit: '%' }, id, language);
}

const ONE = { value: 1, lower: null, upper: null };

function againstFirst({ pairs }: ComparisonResult, sample: number): Omit<WithInterval, 'why'> {
  const pair = pairs.find(
    ({ first, second }) => (first === 0 && second === sample) || (first === sample && second === 0),
  );
  if (pair === undefined) return { value: null, lower: null, upper: null };
  const { ratio } = headlineOf(pair);
  if (pair.first === 0) return ratio;
  const inverse = (value: number | null) => (value === null || value === 0 ? null : 1 / value);
  return { value: inverse(ratio.value), lower: inverse(ratio.upper), upper: inverse(ratio.lower) };
}

/** Whether only the declared factor is another: every factor that is not shown to be equal, with its values. */
export function factorBlocks(result: ComparisonResult, language: Language, level: 2 | 3 = 2): Block[] {
  const { comparison: words, items } = language.words;
  const open = result.factors.filter(({ state }) => state !== 'equal');
  const equal = result.factors.filter(({ state }) => state === 'equal').map(({ name }) => named(name));
  const shown = open.slice(0, MOST.factors);
  const table: Block = {
    kind: 'table',
    caption: words.factors,
    columns: [
      { head: words.factor },
      { head: words.state },
      ...result.samples.map(({ label }) => ({ head: named(label) })),
    ],
    rows: shown.map(({ name, state, values, despite }): Cell[] => [
      { text: named(name) },
      { text: despite === null ? words.states[state] : `${words.states[state]}; ${words.despite(despite)}` },
      ...values.map((value): Cell => ({ text: value ?? words.notRecorded })),
    ]),
    below: open.length > shown.length ? items.more(open.length - shown.length) : undefined,
  };
  return [
    heading(words.factors, level),
    ...records(result.refused, language),
    ...(shown.length === 0 ? [] : [table]),
    ...(equal.length === 0 ? [] : [paragraph(words.alsoEqual(language.words.list(equal, 40)), 'small')]),
  ];
}

/** The ratios and differences of medians and low percentage points, and the tyres that decide. */
export function energyBlocks(result: ComparisonResult, language: Language, level: 2 | 3 = 2): Block[] {
  const { comparison: words, items } = language.words;
  const { kind, unit, pairs, samples, influence, notes } = result;
  const shown = pairs.slice(0, MOST.pairs);
  const name = (i: number) => named(samples[i]!.label);
  if (shown.length === 0) return [];
  const whys = pairs.flatMap(({ differences }) => differences.flatMap(({ ratio }) => ratio.why ?? []));
  return [
    heading(words.energies[kind], level),
    {
      kind: 'table',
      caption: words.energies[kind],
      columns: [
        { head: words.pair },
        { head: words.point },
        { head: words.ratio },
        { head: words.difference(unit) },
      ],
      rows: shown.flatMap(({ first, second, differences }) =>
        differences.map((of) => [
          { text: `${name(second)} / ${name(first)}` },
          { text: pointName(of, language) },
          { text: valueAndRange(of.ratio, language) },
          { text: valueAndRange(of.difference, language) },
        ]),
      ),
      below: pairs.length > shown.length ? items.more(pairs.length - shown.length) : undefined,
    },
    ...(samples.length > 2 ? [paragraph(words.holm, 'small')] : []),
    ...records([...new Set([...whys, ...notes])], language),
    ...(influence.length === 0
      ? []
      : [
          heading(words.influence, 3),
          ...list(
            influence
              .slice(0, MOST.influence)
              .map(
                ({ sample, specimen, effect }) =>
                  `${named(specimen)} (${name(sample)}): ${language.record(effect).text}`,
              ),
          ),
        ]),
  ];
}

function pointName(
  { probability, spreads, interval }: PercentileDifference,
  { words, number }: Language,
): string {
  const { median, percentPoint, spreads: names, basis } = words.comparison;
  const point = probability === 0.5 ? median : percentPoint(number(`${plain(100 * probability)} %`));
  return `${point}, ${names[spreads]}, ${basis[interval]}`;
}

export function valueAndRange({ value, lower, upper }: WithInterval, language: Language): string {
  const { words } = language;
  if (value === null) return '—';
  const width = lower !== null && upper !== null ? (upper - lower) / 4 : Math.abs(value) / 20;
  const decimals = decimalsFor(width);
  const say = (one: number) => language.number(one.toFixed(decimals));
  if (lower !== null && upper !== null) return `${say(value)} (${words.between(say(lower), say(upper))})`;
  if (lower !== null) return `${say(value)} (${words.from(say(lower))})`;
  return `${say(value)} (${upper === null ? words.open : words.upTo(say(upper))})`;
}
