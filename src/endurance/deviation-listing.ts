import { catalogued } from '../conformance/catalogue/catalogue.ts';
import type { ListedDeviation, Scope, Severity } from '../conformance/deviation.ts';

/** What happened often, as far as it is listed one by one, and in sum. */
export interface Repeated<Item> {
  readonly count: number;
  readonly listed: readonly Item[];
  readonly lastLine: number;
}

/** Where one of them stands, and what was found. */
export interface Found {
  readonly file: number;
  readonly line: number;
  readonly found: string;
}

/** Writes deviations of a log: the first of a code stand alone, those beyond are one entry with the sum of all. */
export class DeviationListing {
  readonly #files: readonly string[];
  readonly #all: ListedDeviation[] = [];

  /** @param files paths of the logs in their order */
  constructor(files: readonly string[]) {
    this.#files = files;
  }

  /**
   * @param say one of them
   * @param sum what all of them come to, as the last entry tells it where not all are listed
   */
  repeated<Item>(
    code: string,
    repeated: Repeated<Item>,
    say: (item: Item) => Found,
    sum: string,
    weight: { severity?: Severity; scope?: Scope } = {},
  ): void {
    const places = repeated.listed.map(say);
    for (const place of places) this.#put(code, place, 1, weight);
    const beyond = repeated.count - places.length;
    const last = places.at(-1);
    if (beyond <= 0 || !last) return;
    const found = `${beyond} more of this kind (${catalogued(code).title}); in all ${repeated.count}: ${sum}`;
    const lines = { firstLine: last.line, lastLine: repeated.lastLine };
    this.#put(code, { ...last, found }, beyond, weight, lines);
  }

  /** What is said once, of all rows from `firstLine` to `lastLine` or of the whole log. */
  once(
    code: string,
    found: string,
    rows: { file?: number; count?: number; firstLine?: number; lastLine?: number } = {},
    weight: { severity?: Severity; scope?: Scope } = {},
  ): void {
    const { file, count = 1, firstLine, lastLine } = rows;
    const place = file === undefined || firstLine === undefined ? null : { file, line: firstLine };
    const lines = firstLine === undefined || lastLine === undefined ? {} : { firstLine, lastLine };
    this.#put(code, { ...place, found }, count, weight, lines);
  }

  /** In the order of the codes, within a code as they were found. */
  all(): readonly ListedDeviation[] {
    return this.#all
      .map((deviation, place) => ({ deviation, place }))
      .sort((a, b) =>
        a.deviation.code === b.deviation.code
          ? a.place - b.place
          : a.deviation.code < b.deviation.code
            ? -1
            : 1,
      )
      .map(({ deviation }) => deviation);
  }

  #put(
    code: string,
    place: { file?: number; line?: number; found: string },
    count: number,
    weight: { severity?: Severity; scope?: Scope },
    lines: { firstLine?: number; lastLine?: number } = {},
  ): void {
    const entry = catalogued(code);
    this.#all.push({
      code,
      severity: weight.severity ?? entry.severity,
      scope: weight.scope ?? entry.scope,
      message: `${place.found}; ${entry.effect}.`,
      file: place.file === undefined ? null : this.#files[place.file]!,
      line: place.line ?? null,
      specimen: null,
      drop: null,
      count,
      ...lines,
    });
  }
}
