import { counted } from '../../quantity/format.ts';
import type { ImpactResult } from '../../result/analysis.ts';
import { named, type Page, paragraph } from './page.ts';
import { table } from './table.ts';

/** Inputs beyond this many are counted only. */
const MOST = 12;

/** The files that the result rests on; the first digits of each hash are enough to see that one has changed. */
export function inputs(page: Page, result: ImpactResult): string[] {
  const shown = result.inputs.slice(0, MOST);
  if (shown.length === 0) return [];
  const rows = shown.map(({ role, path, rows, sha256 }) => [
    role,
    rows === null ? named(path) : `${named(path)}, ${counted(rows, 'row')}`,
    sha256.slice(0, 12),
  ]);
  const columns = [
    { head: '', align: 'left' },
    { head: 'file', align: 'left', least: 20 },
    { head: 'SHA-256', align: 'left' },
  ] as const;
  const rest = result.inputs.length - shown.length;
  const more =
    rest > 0 ? paragraph(page, `and ${counted(rest, 'more file', 'more files')}; --json lists them`) : [];
  return [...table(page, columns, rows), ...more];
}
