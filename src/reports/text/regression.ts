import { significant } from '../../quantity/format.ts';
import type { ImpactResult } from '../../result/analysis.ts';
import type { RegressionResult } from '../../result/regression.ts';
import { named, type Page, paragraph, sentence } from './page.ts';
import { table } from './table.ts';

/** The effects that the protocol asks for, each with its likelihood-ratio test, or why there are none; then of each sample. */
export function regression(page: Page, result: ImpactResult): string[] {
  if (result.regression === null) return [];
  const each = result.samples.flatMap(({ name, regression: own }) => (own ? [{ name, own }] : []));
  return [
    ...(each.length === 0 ? [] : paragraph(page, 'All samples on one likelihood')),
    ...ofOne(page, result.regression),
    ...each.flatMap(({ name, own }) => ['', ...paragraph(page, named(name)), ...ofOne(page, own)]),
  ];
}

function ofOne(page: Page, found: RegressionResult): string[] {
  if (found.why !== null) return paragraph(page, sentence(`not carried out: ${found.why}`));
  const unit = found.unit === '1' ? 'ln E' : found.unit;
  const effects = found.effects.map(({ name, value, standardError, per }) => [
    named(name),
    `${significant(value, 3)} ${unit}${per === null ? '' : `/${per}`}`,
    significant(standardError, 2),
  ]);
  const tests = found.tests.map(({ term, statistic, degrees, p, why }) => [
    named(term),
    statistic === null ? '—' : statistic.toFixed(2),
    degrees === null ? '—' : String(degrees),
    p === null ? `— ${why ?? ''}` : significant(p, 2),
  ]);
  return [
    ...table(
      page,
      [
        { head: 'effect on strength', align: 'left', least: 18 },
        { head: 'value', align: 'right' },
        { head: 'std. error', align: 'right' },
      ],
      effects,
    ),
    '',
    ...table(
      page,
      [
        { head: 'likelihood-ratio test', align: 'left', least: 18 },
        { head: 'statistic', align: 'right' },
        { head: 'degrees', align: 'right' },
        { head: 'p', align: 'left', least: 10 },
      ],
      tests,
    ),
    ...found.notes.flatMap((note) => paragraph(page, sentence(note), 4)),
  ];
}
