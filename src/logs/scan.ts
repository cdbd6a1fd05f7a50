import { type Fault, LONGEST_ROW, nulFault, rowFault } from './fault.ts';
import type { Place } from './finding.ts';
import { cutAt } from './fixed-width.ts';
import { type QuotedRow, scanQuoted } from './quoted.ts';
import { placeIn, Row } from './row.ts';

/** NUL bytes at the end of a file, as a crash leaves them. */
export interface Padding extends Place {
  readonly count: number;
}

/**
 * Text in pieces cut anywhere → rows, in constant memory. Lines end with LF, CRLF or a lone CR. Faults stand in
 * their order between the rows; after a fatal one nothing more may be pushed.
 */
export class RowScanner {
  readonly #separator: string;
  readonly #widths: readonly number[] | null;
  /** The row that has begun and not ended. */
  #pending = '';
  /** The line on which it begins. */
  #line = 1;
  #isHeaderRead = false;
  #padding: Padding | null = null;

  /** @param widths of the columns, where these and no separator tell them apart; a quote is then text */
  constructor(separator: string, widths: readonly number[] | null = null) {
    this.#separator = separator;
    this.#widths = widths;
  }

  /** Place of the next character to come. */
  get position(): Place {
    return placeIn(this.#pending, this.#pending.length, this.#line);
  }

  get padding(): Padding | null {
    return this.#padding;
  }

  *push(text: string): Generator<Row | Fault> {
    const nul = this.#padding ? 0 : text.indexOf('\0');
    yield* this.#scan(nul < 0 ? text : text.slice(0, nul), false, false);
    if (nul >= 0) yield* this.#pad(text.slice(nul));
  }

  /**
   * The last row, where no line break ends it.
   *
   * @param isInsideCharacter whether the bytes break off inside one
   */
  *end(isInsideCharacter = false): Generator<Row | Fault> {
    // NULs right behind a row say that writing was interrupted: its last cell may be half of what was meant.
    yield* this.#scan('', true, isInsideCharacter || this.#padding !== null);
  }

  *#pad(text: string): Generator<Fault> {
    const { line, column, count } = this.#padding ?? { ...this.position, count: 0 };
    if (this.#isHeaderRead && !/[^\0]/.test(text)) {
      this.#padding = { line, column, count: count + text.length };
    } else {
      yield nulFault({ line, column }, !this.#isHeaderRead);
    }
  }

  *#scan(text: string, isFinal: boolean, isCut: boolean): Generator<Row | Fault> {
    const all = this.#pending + text;
    const next = new Finder(all);
    let at = 0;
    while (at < all.length) {
      const stop = next.lineBreak(at);
      const quoted =
        this.#widths === null && next.quote(at) < stop ? scanQuoted(all, at, this.#separator) : null;
      const end = quoted ? at + quoted.length : Math.min(stop, all.length);
      if (!isFinal && !isWhole(all, end)) break;
      const row = all.slice(at, end);
      const fault = rowFault(row, quoted, this.#line);
      if (fault) yield fault;
      else yield this.#row(row, quoted, end < all.length, isCut);
      if (fault?.isFatal) return;
      this.#line += quoted ? placeIn(row, row.length, 1).line : 1;
      at = all[end] === '\r' && all[end + 1] === '\n' ? end + 2 : end + 1;
    }
    this.#pending = all.slice(at);
    if (this.#pending.length > LONGEST_ROW) {
      const fault = rowFault(this.#pending, scanQuoted(this.#pending, 0, this.#separator), this.#line);
      if (fault) yield fault;
    }
  }

  #row(text: string, quoted: QuotedRow | null, isEnded: boolean, isCut: boolean): Row {
    this.#isHeaderRead = true;
    const placed = this.#widths === null ? quoted : cutAt(text, this.#widths, isEnded);
    return new Row({
      line: this.#line,
      text,
      cells: placed?.cells ?? text.split(this.#separator),
      starts: placed?.starts ?? null,
      isEnded,
      isCut: !isEnded && (isCut || (quoted !== null && quoted.open !== null)),
    });
  }
}

/** Whether the row that ends at `end` is known to end there: a CR at the end of the text may be half a CRLF. */
function isWhole(text: string, end: number): boolean {
  return end < text.length - 1 || (end === text.length - 1 && text[end] !== '\r');
}

/** The next line break and the next quote, searched for once each: looking anew from every row is quadratic. */
class Finder {
  readonly #text: string;
  #lf = -1;
  #cr = -1;
  #quote = -1;

  constructor(text: string) {
    this.#text = text;
  }

  lineBreak(from: number): number {
    if (this.#lf < from) this.#lf = this.#find('\n', from);
    if (this.#cr < from) this.#cr = this.#find('\r', from);
    return Math.min(this.#lf, this.#cr);
  }

  quote(from: number): number {
    if (this.#quote < from) this.#quote = this.#find('"', from);
    return this.#quote;
  }

  #find(what: string, from: number): number {
    const at = this.#text.indexOf(what, from);
    return at < 0 ? Number.POSITIVE_INFINITY : at;
  }
}
