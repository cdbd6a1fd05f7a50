import { amount, fixed, percent } from '../../quantity/amount.ts';
import { counted, decimalsFor, significant } from '../../quantity/format.ts';
import type {
  Component,
  GaugeStudyResult,
  InterlaboratoryResult,
  LevelPrecision,
  ReadersResult,
  RepeatabilityResult,
} from '../../result/repeatability.ts';
import { named, type Page, pageOf, paragraph, section, sentence, type TextOptions } from '../text/page.ts';
import { table } from '../text/table.ts';

/** A study of repeatability for people: the finding, the components with their intervals, then what they come from. */
export function repeatabilityText({ study, notes }: RepeatabilityResult, options: TextOptions): string {
  const page = pageOf(options);
  const lines = [
    ...(study.kind === 'gauge'
      ? gauge(page, study)
      : study.kind === 'laboratories'
        ? laboratories(page, study)
        : readers(page, study)),
    ...section(
      page,
      'Notes',
      notes.flatMap((note) => paragraph(page, sentence(note), 2, 4)),
    ),
  ];
  return `${lines.join('\n')}\n`;
}

function heading(page: Page, text: string): string[] {
  return paragraph(page, text, 0).map((line) => page.ink.bold(line));
}

function gauge(page: Page, study: GaugeStudyResult): string[] {
  const { parts, operators, trials, components, averageRange, anova, unit, distinctCategories, why } = study;
  const of = (name: Component['of']) => components.find((one) => one.of === name)!;
  const share = percent(Number((100 * (of('gauge').share ?? 0)).toPrecision(3)) / 100);
  const rows = anova.map(({ source, sumOfSquares, degrees, meanSquare, f, p }) => [
    source,
    String(degrees),
    significant(sumOfSquares, 5),
    significant(meanSquare, 4),
    f === null ? '' : significant(f, 4),
    p === null ? '' : pText(p),
  ]);
  const ranges = `by averages and ranges: repeatability ${amountOf(averageRange.repeatability, unit)}, reproducibility ${amountOf(averageRange.reproducibility, unit)}, gauge ${amountOf(averageRange.gauge, unit)}, part ${amountOf(averageRange.part, unit)}; it takes no account of an interaction`;
  const categories = `the gauge tells ${Math.floor(distinctCategories)} classes of parts apart (${significant(distinctCategories, 3)}); 5 or more are wanted (common practice)`;
  return [
    ...heading(
      page,
      `Gauge study: ${counted(parts, 'part')} by ${counted(operators, 'operator')}, ${counted(trials, 'trial')} each; the gauge makes ${share} of the total deviation.`,
    ),
    ...section(page, 'Standard deviations', [
      ...componentTable(page, components, unit),
      ...[why, categories, ranges].flatMap((text) => paragraph(page, sentence(text), 2, 4)),
    ]),
    ...section(
      page,
      'Analysis of variance',
      table(
        page,
        ['', 'degrees', 'sum of squares', 'mean square', 'F', 'p'].map((head, i) => ({
          head,
          align: i === 0 ? 'left' : 'right',
        })),
        rows,
      ),
    ),
  ];
}

function laboratories(page: Page, { levels, unit }: InterlaboratoryResult): string[] {
  return [
    ...heading(
      page,
      levels.length === 1
        ? `Precision between laboratories: r = ${amountOf(levels[0]!.repeatabilityLimit, unit)}, R = ${amountOf(levels[0]!.reproducibilityLimit, unit)}.`
        : `Precision between laboratories at ${levels.length} levels.`,
    ),
    ...levels.flatMap((level) => ofLevel(page, level, unit)),
    ...paragraph(
      page,
      'Two results differ by more than r (one laboratory) or R (two laboratories) in 5 % of cases. No laboratory was left out: an outlier is a reason to look for a cause.',
    ),
  ];
}

function ofLevel(page: Page, level: LevelPrecision, unit: string | null): string[] {
  const { laboratories: each, components, tests, repeatabilityLimit, reproducibilityLimit, mean } = level;
  const rows = each.map(({ laboratory, results, mean: own, deviation, h, k }) => [
    named(laboratory),
    String(results),
    significant(own, 5),
    deviation === null ? '' : significant(deviation, 3),
    fixed(h, 2),
    k === null ? '' : fixed(k, 2),
  ]);
  const found = tests.map(
    ({ test, laboratory, statistic, critical5, critical1, finding }) =>
      `${test === 'Cochran' ? "Cochran's test of the scatter" : "Grubbs' test of the means"}: ${named(laboratory)} ${significant(statistic, 3)} (5 % ${significant(critical5, 3)}, 1 % ${significant(critical1, 3)}): ${finding}`,
  );
  const limits = `mean ${amountOf(mean, unit)}; r = ${amountOf(repeatabilityLimit, unit)}, R = ${amountOf(reproducibilityLimit, unit)}`;
  return section(page, level.level === null ? 'Laboratories' : `Level ${named(level.level)}`, [
    ...table(
      page,
      ['laboratory', 'results', 'mean', 'deviation', 'h', 'k'].map((head, i) => ({
        head,
        align: i === 0 ? 'left' : 'right',
      })),
      rows,
    ),
    '',
    ...componentTable(page, components, unit),
    ...[limits, ...found].flatMap((text) => paragraph(page, sentence(text), 2, 4)),
    '',
  ]);
}

function readers(page: Page, study: ReadersResult): string[] {
  const { specimens, readings, table: counts, observed, expected, kappa, interval, why } = study;
  const ends =
    interval === null
      ? ''
      : `, ${percent(interval.level)} interval ${fixed(interval.lower, 2)} to ${fixed(interval.upper, 2)}`;
  const head =
    kappa === null
      ? `Two readers of ${counted(specimens, 'specimen')}: ${why}.`
      : `Two readers of ${counted(specimens, 'specimen')}: kappa ${fixed(kappa, 2)}${ends}.`;
  const text = `both read alike in ${percent(Math.round(1000 * observed) / 1000)} of specimens, by chance they would in ${percent(Math.round(1000 * expected) / 1000)}`;
  return [
    ...heading(page, head),
    ...section(page, 'First reader down, second across', [
      ...table(
        page,
        ['', ...readings].map((head_, i) => ({
          head: named(head_).replace('""', ''),
          align: i === 0 ? 'left' : 'right',
        })),
        counts.map((row, i) => [named(readings[i]!), ...row.map(String)]),
      ),
      ...paragraph(page, sentence(text)),
    ]),
  ];
}

function componentTable(page: Page, components: readonly Component[], unit: string | null): string[] {
  const level = percent(components.find(({ interval }) => interval !== null)?.interval?.level ?? 0.95);
  const hasShare = components.some(({ share }) => share !== null);
  const rows = components.map(({ of, variance, deviation, interval, share }) => [
    of,
    variance < 0 ? `0 (variance ${significant(variance, 2)})` : amountOf(deviation, unit),
    interval === null
      ? ''
      : `${significant(interval.lower, 3)} to ${Number.isFinite(interval.upper) ? significant(interval.upper, 3) : 'no limit'}`,
    ...(hasShare ? [share === null ? '' : percent(Number((100 * share).toPrecision(3)) / 100)] : []),
  ]);
  return table(
    page,
    ['', 'deviation', `${level} interval`, ...(hasShare ? ['of total'] : [])].map((head, i) => ({
      head,
      align: i === 1 || i === 3 ? 'right' : 'left',
    })),
    rows,
  );
}

function amountOf(value: number, unit: string | null): string {
  const decimals = Math.min(6, decimalsFor(Math.abs(value) / 10));
  return amount(value, decimals, unit ?? '');
}

function pText(p: number): string {
  return p < 0.001 ? '< 0.001' : significant(p, 3);
}
