import type { SheetRow } from '../../result/plan.ts';

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

/** The run sheet as a table: comma-separated, a header row, one row a drop. */
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
  return [head, ...lines].map((cells) => `${cells.map(cell).join(',')}\n`).join('');
}

function plain(value: number): string {
  return String(Number(value.toFixed(3)));
}

/** Quoted where the text would else be read as something else (RFC 4180). */
function cell(text: string): string {
  return /[",\r\n]|^\s|\s$/u.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
