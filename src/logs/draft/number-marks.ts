/** Marks of the numbers in a sample; null where the cells leave it open. */
export interface NumberMarks {
  readonly decimal: '.' | ',' | null;
  readonly thousands: '.' | ',' | ' ' | "'" | null;
  /** A cell that can be read two ways, where there is one and nothing settles it. */
  readonly doubtful: string | null;
}

const BOTH = /^[+-]?\d{1,3}(?:([.,' \u00a0\u202f’])\d{3})+([.,])\d+$/;
const ONE_MARK = /^[+-]?\d+([.,])(\d+)$/;
const GROUPS = /^[+-]?\d{1,3}(?:[.,]\d{3})+$/;

/**
 * The marks that a file of numbers can have, from cells that can be read one way only: `2,05` has a decimal comma,
 * `1.250,5` a thousands point beside it. Never from `1.250` alone.
 */
export function numberMarks(cells: readonly string[]): NumberMarks {
  const decimals = new Set<'.' | ','>();
  const thousands = new Set<string>();
  let doubtful: string | null = null;
  for (const cell of cells) {
    const both = BOTH.exec(cell);
    if (both) {
      thousands.add(both[1]!);
      decimals.add(both[2] as '.' | ',');
      continue;
    }
    const one = ONE_MARK.exec(cell);
    if (GROUPS.test(cell)) doubtful ??= cell;
    else if (one) decimals.add(one[1] as '.' | ',');
  }
  if (decimals.size !== 1) {
    const first = decimals.size === 2 ? cells.find((cell) => ONE_MARK.test(cell)) : undefined;
    return { decimal: null, thousands: null, doubtful: first ?? doubtful };
  }
  const [decimal] = decimals;
  const [mark] = thousands;
  const spaced = mark !== undefined && /[ \u00a0\u202f]/.test(mark) ? ' ' : mark === '’' ? "'" : mark;
  const other = decimal === ',' ? '.' : ',';
  const isGrouped = cells.some((cell) => GROUPS.test(cell) && cell.includes(other));
  return {
    decimal: decimal!,
    thousands: (spaced as NumberMarks['thousands']) ?? (isGrouped ? other : null),
    doubtful: null,
  };
}
