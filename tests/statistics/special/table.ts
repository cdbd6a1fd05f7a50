import { readFileSync } from 'node:fs';

/** A table of tests/reference/special: each row an object by column; null where no double holds the value. */
export function readTable(name: string): Record<string, number>[] {
  const file = new URL(`../../reference/special/${name}.json`, import.meta.url);
  const { columns, rows } = JSON.parse(readFileSync(file, 'utf8')) as { columns: string[]; rows: number[][] };
  return rows.map((row) => Object.fromEntries(columns.map((column, i) => [column, row[i]!])));
}

/** |found − expected| over |expected|; the plain difference where 0 is expected. */
export function relativeError(found: number, expected: number): number {
  return Math.abs(found - expected) / (expected === 0 ? 1 : Math.abs(expected));
}

/** The largest relative error over the rows that hold a value. */
export function worst(
  rows: Record<string, number>[],
  column: string,
  f: (row: Record<string, number>) => number,
): number {
  const errors = rows.filter((row) => row[column] !== null).map((row) => relativeError(f(row), row[column]!));
  if (errors.length === 0) throw new Error(`no row has ${column}`);
  return errors.reduce((a, b) => (b > a || Number.isNaN(b) ? b : a), 0);
}
