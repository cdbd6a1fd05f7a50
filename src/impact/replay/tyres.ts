import type { DeviationList } from '../../conformance/deviation-list.ts';
import type { Construction } from '../../documents/kinds.ts';
import type { Specimen } from '../../logs/register.ts';
import { quote } from '../../problem/echo.ts';
import { leaveOut, raiseAt, type Visit } from './replayed.ts';
import { newTyre, type Tyre } from './tyre.ts';

/** Who a log's specimens are. */
export interface Tyres {
  /** The record of a specimen, made when it is first met. */
  of(specimen: string): Tyre;
  /** All that were met, in the order of their first drops. */
  readonly all: readonly Tyre[];
}

/** @param register null where the run names no specimens table: then every specimen belongs. */
export function tyresOf(register: readonly Specimen[] | null, constructions: readonly Construction[]): Tyres {
  const rows = register === null ? null : new Map(register.map((row) => [row.specimen, row]));
  const named = constructionsByName(constructions);
  const met = new Map<string, Tyre>();
  const all: Tyre[] = [];
  return {
    all,
    of(specimen) {
      let tyre = met.get(specimen);
      if (tyre === undefined) {
        const row = rows?.get(specimen) ?? null;
        tyre = newTyre(specimen, all.length, {
          row,
          construction: constructionOf(row, named, constructions),
          stranger: rows === null ? null : strangeness(specimen, row, named, constructions),
        });
        met.set(specimen, tyre);
        all.push(tyre);
      }
      return tyre;
    },
  };
}

/** By id and by `id@revision`; of two revisions the first stands for the bare id. */
export function constructionsByName(constructions: readonly Construction[]): Map<string, Construction> {
  const named = new Map<string, Construction>();
  for (const construction of constructions) {
    if (!named.has(construction.id)) named.set(construction.id, construction);
    named.set(`${construction.id}@${construction.revision}`, construction);
  }
  return named;
}

function constructionOf(
  row: Specimen | null,
  named: ReadonlyMap<string, Construction>,
  constructions: readonly Construction[],
): Construction | null {
  const id = row?.construction;
  if (id != null) return named.get(id) ?? null;
  return constructions.length === 1 ? constructions[0]! : null;
}

function strangeness(
  specimen: string,
  row: Specimen | null,
  named: ReadonlyMap<string, Construction>,
  constructions: readonly Construction[],
): string | null {
  if (row === null) return `${quote(specimen)} is not in the table of specimens`;
  // A reference tyre is of whatever construction the lab keeps for it.
  const isOther = row.role === 'reference' || row.role === 'spare';
  if (row.construction === null || constructions.length === 0 || isOther) return null;
  if (named.has(row.construction)) return null;
  const expected = constructions.map(({ id, revision }) => quote(`${id}@${revision}`)).join(' or ');
  return `${quote(specimen)} is registered as ${quote(row.construction)}, the run names ${expected}`;
}

/** Raises DROP-52 once for a specimen that does not belong here, and leaves out each of its drops. */
export function checkMembership(visit: Visit, isFirst: boolean, list: DeviationList): void {
  const { stranger } = visit.tyre;
  if (stranger === null) return;
  if (isFirst) raiseAt(list, visit, 'DROP-52', () => stranger);
  // A stranger's drop must not come back in the estimate with the unexplained exclusions.
  if (visit.use === 'unexplained') visit.use = 'invalid';
  leaveOut(visit, 'DROP-52');
}
