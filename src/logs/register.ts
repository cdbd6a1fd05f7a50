/** One row of the specimens table. */
export interface Specimen {
  readonly file: string;
  readonly line: number;
  readonly specimen: string;
  /** Construction id, or `id@revision`. */
  readonly construction: string | null;
  readonly role: string | null;
  /** g. */
  readonly mass: number | null;
  /** Every other cell by its column name, as written. */
  readonly other: Readonly<Record<string, string>>;
}
