import type { EnduranceResult, TyreEntry } from '../../result/endurance.ts';
import { clean, type Page } from '../text/page.ts';
import { table } from '../text/table.ts';

/** The ledger of each tyre of a drum with several positions, and where it stood in turn. */
export function tyresOnDrum(page: Page, { tyres }: EnduranceResult): string[] {
  if (tyres.length === 0) return [];
  const columns = [
    { head: 'tyre', align: 'left', least: 8 },
    { head: 'position', align: 'left', least: 8 },
    { head: 'logged', align: 'right' },
    { head: 'at condition', align: 'right' },
    { head: 'excluded', align: 'right' },
    { head: 'unverified', align: 'right' },
  ] as const;
  const rows = tyres.map(({ specimen, stints, distance }) => [
    specimen === null ? 'not stated' : clean(page, specimen),
    stintsText(page, stints),
    ...[distance.logged, distance.atCondition, distance.excluded, distance.unverified].map((km) =>
      (km ?? 0).toFixed(1),
    ),
  ]);
  return table(page, columns, rows);
}

function stintsText(page: Page, stints: TyreEntry['stints']): string {
  return stints.map(({ position }) => clean(page, position)).join(', then ');
}
