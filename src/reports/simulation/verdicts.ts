import type { SimulatedPoint } from '../../result/simulation.ts';
import { named, type Page, section } from '../text/page.ts';
import { type Column, table } from '../text/table.ts';
import { shareText } from './numbers.ts';

/** Chance of each verdict at one true median, criterion by criterion. */
export function chances(page: Page, { verdicts }: SimulatedPoint): string[] {
  if (verdicts === null) return [];
  const words = ['pass', 'fail', 'inconclusive'] as const;
  const columns: Column[] = [
    { head: 'criterion', align: 'left', least: 12 },
    ...words.map((head): Column => ({ head, align: 'right' })),
  ];
  const row = (id: string, found: (typeof verdicts)['overall']) => [
    id,
    ...words.map((word) => (found[word] === undefined ? '0' : shareText(found[word]))),
  ];
  const rows = [
    ...verdicts.criteria.map(({ id, verdicts: found }) => row(named(id), found)),
    row('all together', verdicts.overall),
  ];
  return section(page, 'Chance of each verdict, %', table(page, columns, rows));
}
