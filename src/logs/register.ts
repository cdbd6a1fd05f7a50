import type { Finding } from './finding.ts';
import type { Replacement } from './replacements.ts';

/** One row of the specimens table. */
export interface Specimen {
  readonly file: string;
  readonly line: number;
  readonly specimen: string;
  /** Construction id, or `id@revision`. */
  readonly construction: string | null;
  /** One-based column of that cell in its line; not set where the table has none. */
  readonly constructionColumn?: number | null;
  readonly role: string | null;
  /** g. */
  readonly mass: number | null;
  /** The specimen whose test this one repeats; null as a rule. */
  readonly replaces?: Replacement | null;
  /** Every other cell by its column name, as written. */
  readonly other: Readonly<Record<string, string>>;
  /** Every quantity by its column name in lower case: g, mm, bar, °C, N, deg, J, ml, Nm, h. */
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

/** The three parts that a specimen can play; an empty cell is a candidate. */
export const ROLES = ['candidate', 'reference', 'spare'] as const;
export type Role = (typeof ROLES)[number];

/** A cell of a specimen's row by the name of its column, in any case, without the unit; null where it is empty. */
export function registerCell({ other }: Specimen, name: string): string | null {
  const exact = other[name];
  if (exact !== undefined) return exact.trim();
  for (const [title, text] of Object.entries(other)) {
    if (title.replace(/\s*\[[^\]]*\]$/u, '').toLowerCase() === name) return text.trim();
  }
  return null;
}
