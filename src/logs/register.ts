import type { Finding } from './finding.ts';

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
  /** Every quantity by its column name in lower case: g, mm, bar, °C, N, deg, J. */
  readonly measured: Readonly<Record<string, number>>;
}

/** A specimens table read to its end. */
export interface Register {
  readonly path: string;
  readonly sha256: string;
  readonly bytes: number;
  readonly specimens: readonly Specimen[];
  readonly findings: readonly Finding[];
}
