import type { Place } from './finding.ts';

/** One row of a table as it stands in the file: its cells, and where each of them is. */
export class Row {
  /** One-based line on which the row begins. */
  readonly line: number;
  /** Cells without their quotes, otherwise as written. */
  readonly cells: readonly string[];
  /** Whether a line break ends it: false only for the last row of a file. */
  readonly isEnded: boolean;
  /** Whether the file breaks off inside it, so that its last cell may be half of what was meant. */
  readonly isCut: boolean;
  readonly #text: string;
  readonly #starts: readonly number[] | null;

  /**
   * @param text the row as written, without the break that ends it
   * @param starts where in `text` each cell begins; null where no cell is quoted and the cells' lengths say it
   */
  constructor(row: {
    line: number;
    text: string;
    cells: readonly string[];
    starts: readonly number[] | null;
    isEnded: boolean;
    isCut: boolean;
  }) {
    this.line = row.line;
    this.cells = row.cells;
    this.isEnded = row.isEnded;
    this.isCut = row.isCut;
    this.#text = row.text;
    this.#starts = row.starts;
  }

  /** The row as written, without the break that ends it. */
  get text(): string {
    return this.#text;
  }

  /** Whether no cell holds anything but white space. */
  get isBlank(): boolean {
    return this.cells.every((cell) => cell.trim() === '');
  }

  /** Where a cell begins, its opening quote included; the row's own line differs after a break inside quotes. */
  place(index: number): Place {
    return placeIn(this.#text, this.#starts?.[index] ?? this.#plainStart(index), this.line);
  }

  #plainStart(index: number): number {
    return this.cells.slice(0, index).reduce((at, cell) => at + cell.length + 1, 0);
  }
}

/** Line and column of an offset in a text whose first character begins `line`. */
export function placeIn(text: string, offset: number, line: number): Place {
  let start = 0;
  let breaks = 0;
  for (const found of text.slice(0, offset).matchAll(/\r\n|\r|\n/g)) {
    breaks += 1;
    start = found.index + found[0].length;
  }
  return { line: line + breaks, column: offset - start + 1 };
}
