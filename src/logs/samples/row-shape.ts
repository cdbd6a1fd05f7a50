import type { SampleLayout } from './layout.ts';

/**
 * How a row is written: of each cell its kind and lengths. Rows of a rig keep their shape for long stretches, and
 * while they do, a row is read without a loop or a branch.
 */
export interface RowShape {
  /** Bytes of the row, line end included. */
  readonly length: number;
  readonly cells: readonly CellShape[];
  /** Of the line end: 1, or 2 for CRLF. */
  readonly endLength: number;
  /** Two rows of the same key have the same shape. */
  readonly key: string;
}

export type CellShape =
  | {
      readonly kind: 'number';
      readonly isNegative: boolean;
      readonly digits: number;
      readonly fraction: number | null;
    }
  | { readonly kind: 'time'; readonly fraction: number | null; readonly suffix: string }
  | { readonly kind: 'state'; readonly word: string }
  | { readonly kind: 'skipped'; readonly length: number };

/** Beyond it, two halves of a number would not fit 32 bits each. */
const MOST_DIGITS = 15;
const NUMBERS = { '.': /^(-?)(\d*)(?:\.(\d*))?$/u, ',': /^(-?)(\d*)(?:,(\d*))?$/u };
const TIMES = {
  '.': /^.{16}:\d\d(?:\.(\d+))?(Z|[+-][\d:]{2,5})?$/u,
  ',': /^.{16}:\d\d(?:,(\d+))?(Z|[+-][\d:]{2,5})?$/u,
};

/**
 * The shape of a row that the scanner has read, or null where it is not of the plain kind.
 *
 * @param mark before the fraction of a second
 */
export function shapeOf(row: string, layout: SampleLayout, mark: '.' | ','): RowShape | null {
  const { dialect, timeIndex, stateIndex, lineEnd, columns } = layout;
  const endLength = lineEnd === 10 && row.endsWith('\r\n') ? 2 : 1;
  const texts = row.slice(0, -endLength).split(dialect.separator);
  const cells: CellShape[] = [];
  for (const [index, text] of texts.entries()) {
    const column = columns.find((candidate) => candidate.index === index);
    if (index === timeIndex) {
      const match = TIMES[mark].exec(text);
      if (!match || (match[1]?.length ?? 0) > 3) return null;
      cells.push({ kind: 'time', fraction: match[1]?.length ?? null, suffix: match[2] ?? '' });
    } else if (index === stateIndex) {
      if (!/^[\w .:-]*$/u.test(text)) return null;
      cells.push({ kind: 'state', word: text });
    } else if (column) {
      const match = NUMBERS[dialect.decimal].exec(text);
      if (!match) return null;
      const digits = match[2]!.length;
      const fraction = match[3]?.length ?? null;
      const isEmpty = text === '';
      const count = digits + (fraction ?? 0);
      if (count > MOST_DIGITS || (count === 0 && !isEmpty) || (isEmpty && column.role === 'elapsed'))
        return null;
      if ((fraction ?? 0) > column.decimals || (fraction === 3 && !dialect.isDecimalStated)) return null;
      cells.push({ kind: 'number', isNegative: match[1] === '-', digits, fraction });
    } else {
      if (!/^[ -!#-~]*$/u.test(text)) return null;
      cells.push({ kind: 'skipped', length: text.length });
    }
  }
  return { length: row.length, cells, endLength, key: JSON.stringify([endLength, ...cells.map(keyOf)]) };
}

function keyOf(cell: CellShape): unknown {
  return Object.values(cell);
}
