import type { DeviationList } from '../../conformance/deviation-list.ts';
import type { Construction } from '../../documents/kinds.ts';
import type { Specimen } from '../../logs/register.ts';
import { quote } from '../../problem/echo.ts';
import { leaveOut, raiseAt, type Visit } from './replayed.ts';

/** Who a log's specimens are: their register row and their construction, where these are known. */
export interface Membership {
  constructionOf(specimen: string): Construction | null;
  /** Raises DROP-52 once for a specimen that does not belong here, and leaves out each of its drops. */
  check(visit: Visit, list: DeviationList): void;
}

/** @param register null where the run names no specimens table: then nothing is checked. */
export function membership(
  register: readonly Specimen[] | null,
  constructions: readonly Construction[],
): Membership {
  const rows = new Map((register ?? []).map((row) => [row.specimen, row]));
  const named = new Map<string, Construction>();
  for (const construction of constructions) {
    if (!named.has(construction.id)) named.set(construction.id, construction);
    named.set(`${construction.id}@${construction.revision}`, construction);
  }
  const strangers = new Map<string, string | null>();

  const strangeness = (specimen: string): string | null => {
    if (register === null) return null;
    const row = rows.get(specimen);
    if (row === undefined) return `${quote(specimen)} is not in the table of specimens`;
    if (row.construction === null || constructions.length === 0 || named.has(row.construction)) return null;
    const expected = constructions.map(({ id, revision }) => quote(`${id}@${revision}`)).join(' or ');
    return `${quote(specimen)} is registered as ${quote(row.construction)}, the run names ${expected}`;
  };

  return {
    constructionOf(specimen) {
      const id = rows.get(specimen)?.construction;
      if (id != null) return named.get(id) ?? null;
      return constructions.length === 1 ? constructions[0]! : null;
    },
    check(visit, list) {
      const { specimen } = visit.drop;
      let why = strangers.get(specimen);
      if (why === undefined) {
        why = strangeness(specimen);
        strangers.set(specimen, why);
        const found = why;
        if (found !== null) raiseAt(list, visit, 'DROP-52', () => found);
      }
      if (why === null) return;
      // A stranger's drop must not come back in the estimate with the unexplained exclusions.
      if (visit.use === 'unexplained') visit.use = 'invalid';
      leaveOut(visit, 'DROP-52');
    },
  };
}
