import type { SheetRow } from '../../result/plan.ts';
import { csvRow } from '../csv-cell.ts';

/** The columns of a plain drop log behind those of the plan: the sheet, filled in, can be analysed as it is. */
const TO_FILL = [
  'height [mm]',
  'pressure [bar]',
  'temperature [°C]',
  'outcome',
  'damage',
  'valid',
  'reason',
  'operator',
  'remark',
];

/**
 * The run sheet as a table: comma-separated, a header row, one row a drop. Names that a spreadsheet would take for a
 * formula are written as text.
 */
export function sheetCsv(rows: readonly SheetRow[]): string {
  const head = ['drop', 'block', 'construction', 'specimen', 'site [deg]', 'planned height [mm]', ...TO_FILL];
  const lines = rows.map(({ order, block, construction, specimen, site, plannedHeight }) => [
    String(order),
    String(block),
    construction ?? '',
    specimen,
    plain(site),
    plannedHeight === null ? '' : plain(plannedHeight),
    ...TO_FILL.map(() => ''),
  ]);
  return [head, ...lines].map((cells) => `${csvRow(cells)}\n`).join('');
}

function plain(value: number): string {
  return String(Number(value.toFixed(3)));
}
