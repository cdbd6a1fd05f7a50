import { counted } from '../../quantity/format.ts';
import type { ImpactResult } from '../../result/analysis.ts';
import { named, type Page, paragraph } from './page.ts';
import { table } from './table.ts';

/** Inputs beyond this many are counted only. */
const MOST = 12;

/** What a rig's profile made of a log; null for the plain form, of which nothing is made. */
function importSentence({ path, import: imported }: ImpactResult['inputs'][number]): string | null {
  if (!imported || imported.rig === null) return null;
  const { rows, segments, gaps, conversions } = imported;
  const emptied = Object.values(imported.emptied).reduce((sum, cells) => sum + cells, 0);
  const parts = [
    `${rows.kept} of ${counted(rows.read, 'row')} kept`,
    rows.collapsed > 0 ? `${rows.collapsed} collapsed (written twice)` : null,
    emptied > 0 ? `${counted(emptied, 'cell')} emptied` : null,
    segments.length > 1 ? `${segments.length} segments` : null,
    gaps.length > 0 ? `${counted(gaps.length, 'gap')} in the numbers` : null,
    ...conversions.map(({ column, from, to }) => `${named(column)} from ${named(from)} to ${to}`),
  ];
  const said = parts.filter((part) => part !== null).join(', ');
  return `${named(path)}, read as rig ${named(imported.rig)} writes: ${said}`;
}

/** The files that the result rests on; the first digits of each hash are enough to see that one has changed. */
export function inputs(page: Page, result: Pick<ImpactResult, 'inputs'>): string[] {
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
  const imported = result.inputs
    .map(importSentence)
    .flatMap((said) => (said === null ? [] : paragraph(page, said)));
  return [...table(page, columns, rows), ...more, ...imported];
}
