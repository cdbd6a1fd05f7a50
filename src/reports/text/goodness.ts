import { significant } from '../../quantity/format.ts';
import type { ImpactResult } from '../../result/analysis.ts';
import type { Goodness } from '../../result/goodness.ts';
import { listed } from './names.ts';
import { named, type Page, paragraph, sentence } from './page.ts';
import { table } from './table.ts';

/** How the laws compare, how the protocol's fits level by level, and how little that tells: of each sample. */
export function goodness(page: Page, result: ImpactResult): string[] {
  const each = result.samples.flatMap(({ name, goodness: found }) => (found ? [{ name, found }] : []));
  if (each.length === 0) return result.goodness === null ? [] : ofOne(page, result.goodness);
  return each.flatMap(({ name, found }, i) => [
    ...(i === 0 ? [] : ['']),
    ...paragraph(page, named(name)),
    ...ofOne(page, found),
  ]);
}

function ofOne(page: Page, found: Goodness): string[] {
  const { laws, without, grouped, why, caveat } = found;
  const rows = laws.map(({ distribution, logLikelihood, aic, weight }) => [
    distribution,
    logLikelihood.toFixed(2),
    aic.toFixed(2),
    weight.toFixed(2),
  ]);
  const columns = [
    { head: 'law', align: 'left' },
    { head: 'log-likelihood', align: 'right' },
    { head: 'AIC', align: 'right' },
    { head: 'Akaike weight', align: 'right' },
  ] as const;
  return [
    ...(rows.length > 0 ? table(page, columns, rows) : []),
    ...without.flatMap(({ distribution, why: reason }) =>
      paragraph(page, sentence(`${distribution}: ${reason}`), 4),
    ),
    ...paragraph(page, sentence(caveat), 4),
    ...(grouped === null ? [] : paragraph(page, groupedSentence(grouped), 4)),
    ...(why === null ? [] : paragraph(page, sentence(`level by level: ${why}`), 4)),
  ];
}

function groupedSentence(grouped: NonNullable<Goodness['grouped']>): string {
  const { distribution, deviance, pearson, degrees, pDeviance, pPearson, why } = grouped;
  const p = (value: number | null) => (value === null ? '' : `, p = ${significant(value, 2)}`);
  const sums = [
    `deviance ${significant(deviance, 3)}${p(pDeviance)}`,
    `Pearson's sum ${significant(pearson, 3)}${p(pPearson)}`,
  ];
  return sentence(
    `level by level, ${distribution}: ${listed(sums, 2)} on ${degrees} degrees of freedom${why === null ? '' : `; ${why}`}`,
  );
}
