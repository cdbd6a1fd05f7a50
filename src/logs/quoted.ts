/** One row with quoted cells, as far as it was understood. Offsets are from the row's begin. */
export interface QuotedRow {
  readonly cells: readonly string[];
  readonly starts: readonly number[];
  /** Length of the row without the break that ends it; up to the end of the text where none does. */
  readonly length: number;
  /** Where the cell opened that has not closed, or that closed with text behind it. */
  readonly open: number | null;
  /** Where that text begins. */
  readonly stray: number | null;
}

/**
 * The cells of one row, by RFC 4180: a cell that begins with a quote ends at the next single one, may hold
 * separators and line breaks, and writes a quote twice. A quote inside a cell that does not begin with one is
 * text (`26" rim`): the RFC leaves it open, and it can be read one way only.
 *
 * @param from where the row begins in `text`
 */
export function scanQuoted(text: string, from: number, separator: string): QuotedRow {
  const cells: string[] = [];
  const starts: number[] = [];
  let at = from;
  for (;;) {
    const start = at;
    starts.push(start - from);
    if (text[start] === '"') {
      const close = closingQuote(text, start + 1);
      cells.push(text.slice(start + 1, close < 0 ? text.length : close).replaceAll('""', '"'));
      const open = start - from;
      if (close < 0) return { cells, starts, length: text.length - from, open, stray: null };
      at = close + 1;
      if (at < text.length && text[at] !== separator && !isBreak(text[at])) {
        return { cells, starts, length: lineEnd(text, at) - from, open, stray: at - from };
      }
    } else {
      while (at < text.length && text[at] !== separator && !isBreak(text[at])) at += 1;
      cells.push(text.slice(start, at));
    }
    if (text[at] !== separator) return { cells, starts, length: at - from, open: null, stray: null };
    at += 1;
  }
}

function closingQuote(text: string, from: number): number {
  let at = text.indexOf('"', from);
  while (at >= 0 && text[at + 1] === '"') at = text.indexOf('"', at + 2);
  return at;
}

function lineEnd(text: string, from: number): number {
  let at = from;
  while (at < text.length && !isBreak(text[at])) at += 1;
  return at;
}

function isBreak(character: string | undefined): boolean {
  return character === '\n' || character === '\r';
}
