import { dimensionOf } from '../../quantity/units.ts';
import { DROP_COLUMNS } from '../drop-columns.ts';
import { headerFingerprint } from '../export/fingerprint.ts';
import { headerCell } from '../export/header.ts';
import type { Row } from '../row.ts';
import type { Sample } from './sample.ts';
import { COLUMN_WORDS, FOOTER_WORDS, SENTINEL_WORDS } from './words.ts';

/** One column of a sample. */
export interface SampleColumn {
  readonly title: string;
  readonly name: string;
  /** From the header or the row of units; null where neither has one. */
  readonly unit: string | null;
  /** Cells of the rows below the header, without white space around them and without the empty ones. */
  readonly cells: readonly string[];
}

/** What a sample looks like: where its header is, and what its columns may be. */
export interface Look {
  readonly sample: Sample;
  /** Lines before the header. */
  readonly preamble: number;
  readonly header: readonly ('names' | 'units' | 'processing')[];
  readonly fingerprint: string;
  readonly columns: readonly SampleColumn[];
  readonly restarts: boolean;
  /** First cells of the summary rows. */
  readonly footer: readonly string[];
  /** Columns that could be each quantity, by its plain name; the likeliest set only. */
  readonly candidates: ReadonlyMap<string, readonly SampleColumn[]>;
  /** Words for no value that stand in columns of numbers. */
  readonly sentinels: readonly string[];
}

const NUMERIC = /^[+-]?[\d.,' \u00a0\u202f’]*\d(?:[eE][+-]?\d+)?$/;

/** Null where the sample holds no table of two columns or more. */
export function lookAt(sample: Sample): Look | null {
  const { rows } = sample;
  const width = commonWidth(rows);
  const at = rows.findIndex((row) => isHeader(row, width));
  if (width < 2 || at < 0) return null;
  const top = rows[at]!;
  const units = rows[at + 1] && isUnitsRow(rows[at + 1]!) ? rows[at + 1]! : null;
  const next = at + (units ? 2 : 1);
  const hasProcessing = rows[next] !== undefined && units !== null && !hasNumber(rows[next]!);
  const below = rows.slice(next + (hasProcessing ? 1 : 0)).filter((row) => row.cells.length === width);
  const isAgain = (row: Row) => row.cells.every((cell, i) => cell === top.cells[i]);
  const isSummary = (row: Row) => FOOTER_WORDS.includes(firstCell(row).toLowerCase());
  const data = below.filter((row) => !row.isBlank && !isAgain(row) && !isSummary(row));
  const columns = top.cells.map((cell, i): SampleColumn => {
    const { title, name, unit } = headerCell(cell);
    const stated = unit ?? units?.cells[i]?.trim().replace(/^\[(.*)\]$/, '$1') ?? null;
    const cells = data.map((row) => row.cells[i]!.trim()).filter((text) => text !== '');
    return { title, name, unit: stated !== null && dimensionOf(stated) !== null ? stated : null, cells };
  });
  return {
    sample,
    preamble: at,
    header: [
      'names',
      ...(units ? (['units'] as const) : []),
      ...(hasProcessing ? (['processing'] as const) : []),
    ],
    fingerprint: headerFingerprint(top.cells),
    columns,
    restarts: below.some(isAgain),
    footer: [...new Set(rows.slice(next).filter(isSummary).map(firstCell))],
    candidates: candidatesOf(columns),
    sentinels: sentinelsIn(columns),
  };
}

function commonWidth(rows: readonly Row[]): number {
  const counts = new Map<number, number>();
  for (const { cells } of rows) counts.set(cells.length, (counts.get(cells.length) ?? 0) + 1);
  return [...counts].reduce((best, it) => (it[1] > best[1] ? it : best), [0, 0])[0];
}

/** A row of names: as wide as the others, no number in it, and most of its cells filled. */
function isHeader(row: Row, width: number): boolean {
  if (row.cells.length !== width || hasNumber(row)) return false;
  return row.cells.filter((cell) => cell.trim() !== '').length > width / 2;
}

function hasNumber(row: Row): boolean {
  return row.cells.some((cell) => NUMERIC.test(cell.trim()));
}

function isUnitsRow(row: Row): boolean {
  const cells = row.cells
    .map((cell) => cell.trim().replace(/^\[(.*)\]$/, '$1'))
    .filter((cell) => !/^-*$/.test(cell));
  return cells.length > 0 && cells.every((cell) => dimensionOf(cell) !== null);
}

function firstCell(row: Row): string {
  return row.cells.find((cell) => cell.trim() !== '')?.trim() ?? '';
}

function candidatesOf(columns: readonly SampleColumn[]): Map<string, readonly SampleColumn[]> {
  const kinds = [...DROP_COLUMNS, { name: 'date', unit: null }];
  const found = kinds.map(({ name: kind, unit }): [string, SampleColumn[]] => {
    const fits = (column: SampleColumn) =>
      unit === null
        ? column.unit === null || kind === 'time'
        : column.unit === null || dimensionOf(column.unit) === dimensionOf(unit);
    const words = COLUMN_WORDS[kind] ?? [kind];
    const named = columns.filter((column) => fits(column) && words.includes(column.name.toLowerCase()));
    if (named.length > 0) return [kind, named];
    const begun = columns.filter(
      (column) =>
        fits(column) && words.some((word) => word.length > 3 && column.name.toLowerCase().startsWith(word)),
    );
    return [kind, begun];
  });
  return new Map(found.filter(([, of]) => of.length > 0));
}

function sentinelsIn(columns: readonly SampleColumn[]): string[] {
  const words = columns.flatMap(({ cells }) => {
    const numbers = cells.filter((cell) => NUMERIC.test(cell)).length;
    if (numbers < cells.length / 2) return [];
    return cells.filter((cell) => SENTINEL_WORDS.has(cell.toLowerCase().replace(/[.,]0+$/, '')));
  });
  return [...new Set(words)];
}
