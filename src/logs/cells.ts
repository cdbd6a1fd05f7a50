import { quote } from '../problem/echo.ts';
import type { ProblemList } from '../problem/problem.ts';
import { convert } from '../quantity/units.ts';
import type { Column } from './columns.ts';
import type { Dialect } from './dialect.ts';
import { idDamage } from './export/damage.ts';
import type { Place } from './finding.ts';
import { readNumber } from './number.ts';
import type { Row } from './row.ts';

/** Bounds of what a quantity can be at all; outside them the cell is a slip or a rig's word for "no value". */
export interface Range {
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  /** Whether `least` itself is outside. */
  readonly isOpen?: boolean;
}

/** How many distinct texts are shared between rows: names and words repeat, times and remarks do not. */
const MOST_SHARED = 10_000;
const MOST_STRANGE = 1000;

/** A word that is none of those expected, where it was first met. */
interface StrangeWord {
  count: number;
  readonly place: Place;
  readonly column: Column;
  readonly text: string;
  readonly words: readonly string[];
  readonly settle: { readonly code: string; readonly message: string };
}

/** Reads the cells of one file's rows, and adds each that is not what it should be to the problems. */
export class CellReader {
  readonly #file: string;
  readonly #problems: ProblemList;
  readonly #dialect: Dialect;
  readonly #shared = new Map<string, string>();
  readonly #strange = new Map<string, StrangeWord>();
  #soundId: string | null = null;

  constructor(file: string, problems: ProblemList, dialect: Dialect) {
    this.#file = file;
    this.#problems = problems;
    this.#dialect = dialect;
  }

  /** Without white space around it; null where the column is not there or the cell is empty. */
  text(row: Row, column: Column | undefined): string | null {
    const text = column && row.cells[column.index]!.trim();
    if (!text) return null;
    const shared = this.#shared.get(text);
    if (shared !== undefined) return shared;
    const own = detached(text);
    if (this.#shared.size < MOST_SHARED) this.#shared.set(own, own);
    return own;
  }

  /** As `text`, for what hardly comes twice, such as a time: it would only fill what is shared. */
  lone(row: Row, column: Column | undefined): string | null {
    const text = column && row.cells[column.index]!.trim();
    return text ? detached(text) : null;
  }

  /** As written, white space and all; null where there is nothing else. */
  verbatim(row: Row, column: Column | undefined): string | null {
    const text = column && row.cells[column.index]!;
    return text && text.trim() !== '' ? detached(text) : null;
  }

  /** In the unit of the range; null where the cell is empty or wrong. */
  quantity(row: Row, column: Column | undefined, range: Range, isNeeded = false): number | null {
    const text = column && row.cells[column.index]!.trim();
    if (!text) return null;
    const read = readNumber(text, this.#dialect.decimal);
    if (typeof read !== 'number') {
      this.problem(row, column, 'not-a-number', `${column.name}: ${read.wrong}; ${settledBy(isNeeded)}`);
      return null;
    }
    const value = convert(read, column.unit ?? range.unit, range.unit);
    if (this.isInside(value, range)) return value;
    this.outOfRange(row, column, range, `; ${settledBy(isNeeded)}`);
    return null;
  }

  /** A name of the lab, refused where a spreadsheet made something else of it; null where there is none. */
  id(row: Row, column: Column | undefined): string | null {
    const text = this.text(row, column);
    return text === null ? null : this.undamaged(row, column!, text);
  }

  /**
   * One of the words, exactly as spelled; null where the cell is empty or wrong. Wrong words are reported by
   * `reportWords`, each once with how often it was seen.
   *
   * @param settle ends the message
   */
  word<Value>(
    row: Row,
    column: Column | undefined,
    words: ReadonlyMap<string, Value>,
    settle: { code: string; message: string },
  ): Value | null {
    const text = this.filled(row, column);
    if (text === null) return null;
    const value = words.get(text) ?? words.get(text.normalize('NFC'));
    if (value !== undefined) return value;
    const key = `${column!.title}\n${text}`;
    const seen = this.#strange.get(key);
    if (seen) seen.count += 1;
    else if (this.#strange.size < MOST_STRANGE) {
      const place = row.place(column!.index);
      this.#strange.set(key, { count: 1, place, column: column!, text, words: [...words.keys()], settle });
    }
    return null;
  }

  /** Whether any word was none of those expected. */
  get hasStrangeWords(): boolean {
    return this.#strange.size > 0;
  }

  /** Adds the wrong words of the file to its problems. */
  reportWords(): void {
    for (const { count, place, column, text, words, settle } of this.#strange.values()) {
      const often = count === 1 ? '' : ` (${count} times, here first)`;
      const expected = words.map((word) => quote(word)).join(', ');
      const message = `${column.name}: found ${quote(text)}${often}, expected ${expected} or an empty cell; ${settle.message}`;
      this.#problems.add({ file: this.#file, ...place, code: settle.code, message });
    }
    this.#strange.clear();
  }

  /** The trimmed text of a cell that holds something. */
  protected filled(row: Row, column: Column | undefined): string | null {
    return (column && row.cells[column.index]!.trim()) || null;
  }

  protected undamaged(row: Row, column: Column, text: string): string | null {
    // A tyre is often hit again: the id above has been looked at.
    if (text === this.#soundId) return text;
    const damage = idDamage(text);
    if (damage === null) {
      this.#soundId = text;
      return text;
    }
    const message = `${column.title}: found ${quote(text)}, ${damage}, expected the id as the lab writes it; write it so, or the profile gives the pattern of the ids (export.columns.${column.name}.pattern)`;
    this.problem(row, column, 'damaged-cell', message);
    return null;
  }

  protected isInside(value: number, { least, most, isOpen }: Range): boolean {
    return value <= most && (isOpen ? value > least : value >= least);
  }

  protected outOfRange(row: Row, column: Column, range: Range, settle: string): void {
    const { unit, least, most, isOpen } = range;
    const text = row.cells[column.index]!.trim();
    const message =
      `${column.name}: found ${quote(`${text} ${column.unit ?? unit}`)}, expected ${isOpen ? 'more than' : 'at least'} ` +
      `${least} ${unit} and at most ${most} ${unit}${settle}`;
    this.problem(row, column, 'out-of-range', message);
  }

  problem(row: Row, column: Column, code: string, message: string): void {
    this.#problems.add({ file: this.#file, ...row.place(column.index), code, message });
  }
}

function settledBy(isNeeded: boolean): string {
  return isNeeded ? 'correct it' : 'correct it, or empty the cell where no value was noted';
}

/** Longest text that the engine copies when it cuts it out of another; a longer one keeps the whole other in memory. */
const COPIED = 12;

/** The same text on its own feet, so that a cell that is kept does not keep the part of the file it was read from. */
function detached(text: string): string {
  return text.length <= COPIED ? text : Buffer.from(text).toString();
}
