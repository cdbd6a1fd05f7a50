/** A value as spreadsheets and programs read it: numbers with all their digits, nothing where there is none. */
export type CsvValue = string | number | null;

/**
 * A row of comma-separated cells (RFC 4180), quoted only where the text needs it, so that `awk -F,` reads the rest. A
 * text that a spreadsheet would take for a formula keeps an apostrophe before it, and line ends become spaces.
 */
export function csvRow(values: readonly CsvValue[]): string {
  return values.map(cellOf).join(',');
}

function cellOf(value: CsvValue): string {
  if (value === null) return '';
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : '';
  const line = value.replace(/[\r\n]+/g, ' ');
  // Also behind blanks, full-width signs and a quotation mark, which some programs pass over.
  const safe = /^[\s"]*[=+\-@\t＝＋－＠|%]/u.test(line) ? `'${line}` : line;
  return /[",]|^\s|\s$/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
