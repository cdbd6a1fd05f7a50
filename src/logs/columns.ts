import { echo, quote } from '../problem/echo.ts';
import type { ProblemList } from '../problem/problem.ts';
import { didYouMean } from '../problem/suggest.ts';
import { dimensionOf, sameDimension, unitNames } from '../quantity/units.ts';
import type { Row } from './row.ts';

/** A column that a kind of table may have. */
export interface ColumnKind<Key extends string> {
  readonly key: Key;
  /** In lower case, without its unit. */
  readonly name: string;
  /** The unit inside the program; null where the column is no quantity. */
  readonly unit: string | null;
  readonly isNeeded?: boolean;
  /** Whether it may have any unit in brackets, or none: the reader keeps it as written. */
  readonly hasAnyUnit?: boolean;
}

/** A column that a table has. */
export interface Column {
  /** Zero-based place among the cells of a row. */
  readonly index: number;
  /** Name and unit as written. */
  readonly title: string;
  readonly name: string;
  /** As written in the brackets; null without them. */
  readonly unit: string | null;
}

/** More columns than any log has: beyond it the file is something else. */
const MOST_COLUMNS = 1000;

/** The header's columns: their names in lower case with single spaces, and the unit from the brackets behind. */
export function headerColumns(header: Row): Column[] {
  return header.cells.slice(0, MOST_COLUMNS).map((cell, index) => {
    const title = cell.trim();
    const open = title.endsWith(']') ? title.lastIndexOf('[') : -1;
    const name = (open < 0 ? title : title.slice(0, open)).replaceAll(/\s+/g, ' ').trim().toLowerCase();
    return { index, title, name, unit: open < 0 ? null : title.slice(open + 1, -1).trim() };
  });
}

/** How a column is written: `height [mm]`, `outcome`. */
export function columnTitle(kind: ColumnKind<string>): string {
  return kind.unit === null ? kind.name : `${kind.name} [${kind.unit}]`;
}

/**
 * Finds the columns of a kind of table in a header. A needed column that is missing, one that stands twice, a unit
 * that is missing, unknown, of another dimension or out of place is a problem; a column of no known name is not.
 */
export function findColumns<Key extends string>(
  header: Row,
  kinds: readonly ColumnKind<Key>[],
  file: string,
  problems: ProblemList,
): { known: Map<Key, Column>; unknown: Column[] } {
  const columns = headerColumns(header);
  const known = new Map<Key, Column>();
  const unknown: Column[] = [];
  const first = new Map<string, Column>();
  const problem = (column: Column, code: string, message: string) =>
    problems.add({ file, ...header.place(column.index), code, message });
  if (header.cells.length > MOST_COLUMNS) {
    const message = `found ${header.cells.length} columns, expected at most ${MOST_COLUMNS}: this is no log`;
    problems.add({ file, line: header.line, column: null, code: 'too-many-columns', message });
  }
  for (const column of columns) {
    const twin = column.name === '' ? undefined : first.get(column.name);
    if (twin) {
      const message = `found column ${quote(column.title)} again (it stands at column ${header.place(twin.index).column} too), expected it once`;
      problem(column, 'duplicate-column', message);
      continue;
    }
    first.set(column.name, column);
    const kind = kinds.find(({ name }) => name === column.name);
    if (!kind) {
      unknown.push(column);
      continue;
    }
    known.set(kind.key, column);
    const wrong = unitFault(column, kind);
    if (wrong) problem(column, wrong.code, wrong.message);
  }
  const missing = kinds.filter(({ key, isNeeded }) => isNeeded && !known.has(key));
  if (missing.length > 0) {
    const message = missingMessage(header, missing, unknown);
    problems.add({ file, line: header.line, column: null, code: 'missing-column', message });
  }
  return { known, unknown };
}

/** What a reader should know of a column with a name that is not known. */
export function unknownColumnMessage(column: Column, kinds: readonly ColumnKind<string>[]): string {
  if (column.name === '') return 'a column without a name: not read';
  const bare = column.name.replace(/ ?\(.*$/, '');
  const kind = kinds.find(({ name }) => name === bare);
  const meant = kind ? `; did you mean ${quote(columnTitle(kind))}?` : '';
  return `unknown column ${quote(column.title)}: not read${
    meant ||
    didYouMean(
      column.name,
      kinds.map(({ name }) => name),
    )
  }`;
}

function unitFault(column: Column, kind: ColumnKind<string>): { code: string; message: string } | null {
  if (kind.hasAnyUnit) return null;
  if (kind.unit === null) {
    if (column.unit === null) return null;
    return {
      code: 'unit-out-of-place',
      message: `found ${quote(column.title)}, expected "${kind.name}" without a unit`,
    };
  }
  const expected = `expected a unit of ${dimensionOf(kind.unit)} in brackets, such as "${columnTitle(kind)}"`;
  if (column.unit === null)
    return { code: 'missing-unit', message: `found ${quote(column.title)}, ${expected}` };
  if (sameDimension(column.unit, kind.unit)) return null;
  const dimension = dimensionOf(column.unit);
  const what =
    dimension === null
      ? `unknown unit ${quote(column.unit)}`
      : `a unit of ${dimension}, ${quote(column.unit)}`;
  const meant = dimension === null ? didYouMean(column.unit, unitNames(dimensionOf(kind.unit)!)) : '';
  return { code: 'wrong-unit', message: `found ${what}, ${expected}${meant}` };
}

function missingMessage(
  header: Row,
  missing: readonly ColumnKind<string>[],
  unknown: readonly Column[],
): string {
  const what = missing.map((kind) => quote(columnTitle(kind))).join(', ');
  const expected = `expected ${missing.length === 1 ? 'a column' : 'columns'} ${what}`;
  const only = header.cells.length === 1 ? header.cells[0]! : null;
  if (only !== null && /[;\t|]/.test(only)) {
    return `found one column, ${quote(only)}, ${expected}, separated by commas; another separator is named by the rig's profile (export.separator)`;
  }
  if (/^sep=/i.test(header.cells[0]!)) {
    return `found ${quote(header.cells.join(','))}, a spreadsheet's hint, expected the header; delete this line, or the rig's profile names it`;
  }
  const near = unknown.map((column) => [column, missing.find((kind) => isNear(column, kind))] as const);
  const meant = near
    .filter(([, kind]) => kind)
    .map(([column, kind]) => `${quote(column.title)} for "${columnTitle(kind!)}"`);
  const names = echo(header.cells.map((cell) => cell.trim()).join(', '), 120);
  return `found the columns ${names}; ${expected}${meant.length > 0 ? `; did you write ${meant.join(', ')}?` : "; other names are given by the rig's profile (export.columns)"}`;
}

function isNear(column: Column, kind: ColumnKind<string>): boolean {
  return didYouMean(column.name.replace(/ ?\(.*$/, ''), [kind.name]) !== '';
}
