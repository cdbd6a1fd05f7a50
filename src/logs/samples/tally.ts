/** What the scanner met that is not a row, or not a value, counted by a kebab-case code. */
export interface Tally {
  /** `blank-line`, `repeated-header`, `nul-padding`, `truncated-line`, `empty-row`, `sentinel`. */
  readonly code: string;
  readonly count: number;
  readonly firstLine: number;
  readonly lastLine: number;
}

/** Tallies by code: constant memory for any number of them, and two halves of a file add up to the whole. */
export class Tallies {
  readonly #byCode = new Map<string, Tally>();

  add(code: string, line: number, count = 1): void {
    this.merge({ code, count, firstLine: line, lastLine: line }, 0);
  }

  /** @param lines how many lines stand before the stretch that the tally is of */
  merge(tally: Tally, lines: number): void {
    const seen = this.#byCode.get(tally.code);
    this.#byCode.set(tally.code, {
      code: tally.code,
      count: (seen?.count ?? 0) + tally.count,
      firstLine: seen?.firstLine ?? tally.firstLine + lines,
      lastLine: tally.lastLine + lines,
    });
  }

  /** In the order of their codes, which no cut can change. */
  all(): readonly Tally[] {
    return [...this.#byCode.values()].sort((a, b) => (a.code < b.code ? -1 : 1));
  }
}
