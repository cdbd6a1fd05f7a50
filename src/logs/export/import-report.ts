/** What became of the rows and cells of one log on their way in. */
export interface ImportReport {
  /** The rig whose profile was used; null for the plain form. */
  readonly rig: string | null;
  /** Hash of the first header's names: what the profile may hold on to. */
  readonly fingerprint: string;
  /** Sheet of a workbook; null for text. */
  readonly sheet: string | null;
  readonly rows: {
    /** Rows below a header that hold anything. */
    readonly read: number;
    /** Rows that became drops. */
    readonly kept: number;
    /** Rows that repeat one before them, cell for cell, in the same log or in an earlier one of the rig. */
    readonly collapsed: number;
  };
  /** Cells that hold a word for "no value", by column. */
  readonly emptied: Readonly<Record<string, number>>;
  /** Stretches under one header each. */
  readonly segments: readonly { readonly line: number; readonly rows: number }[];
  /** Where the running number jumps inside a segment: the line, and how many numbers are missing before it. */
  readonly gaps: readonly { readonly line: number; readonly missing: number }[];
  readonly conversions: readonly {
    readonly column: string;
    readonly from: string;
    readonly to: string;
    readonly cells: number;
  }[];
  /** Lines before the header and summary rows, kept as written. */
  readonly metadata: readonly { readonly line: number; readonly key: string; readonly value: string }[];
}

/** Counts of an import while it goes on. */
export class ImportTally {
  readonly emptied = new Map<string, number>();
  readonly #conversions = new Map<string, { column: string; from: string; to: string; cells: number }>();

  empty(column: string): void {
    this.emptied.set(column, (this.emptied.get(column) ?? 0) + 1);
  }

  convert(column: string, from: string, to: string): void {
    const key = `${column}\n${from}`;
    const counted = this.#conversions.get(key);
    if (counted) counted.cells += 1;
    else this.#conversions.set(key, { column, from, to, cells: 1 });
  }

  get conversions(): ImportReport['conversions'] {
    return [...this.#conversions.values()];
  }
}
