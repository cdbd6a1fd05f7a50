import { DROP_CATALOGUE } from './drop.ts';
import { DRUM_CATALOGUE } from './drum.ts';
import type { CatalogueEntry } from './entry.ts';

/** The single source of codes, for messages, explanations and tests; one file a kind of test stands beside this. */
export const CATALOGUE: ReadonlyMap<string, CatalogueEntry> = new Map(
  [...DROP_CATALOGUE, ...DRUM_CATALOGUE].map((entry) => [entry.code, entry]),
);

/**
 * The entry of a code.
 *
 * @throws RangeError for a code that is not in the catalogue: a fault of the program, never of an input.
 */
export function catalogued(code: string): CatalogueEntry {
  const entry = CATALOGUE.get(code);
  if (entry === undefined) throw new RangeError(`no deviation has the code ${code}`);
  return entry;
}

/** The first thing in a text that looks like a code (`DROP-16`, in any case), or null. */
export function codeIn(text: string): string | null {
  return /\b(?:DROP|DRUM)-\d{2}\b/iu.exec(text)?.[0].toUpperCase() ?? null;
}
