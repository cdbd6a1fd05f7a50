/** Something about a file that a reader should know and that did not keep it from being read. */
export interface Finding {
  /** Stable kebab-case word: `truncated-line`, `nul-padding`, `unknown-column`, `empty-rows`. */
  readonly code: string;
  readonly message: string;
  readonly line: number | null;
  readonly column: number | null;
}

/** One-based line and column (in UTF-16 units, as editors count) of a file. */
export interface Place {
  readonly line: number;
  readonly column: number;
}
