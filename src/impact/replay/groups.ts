import type { Construction } from '../../documents/kinds.ts';
import { echo } from '../../problem/echo.ts';
import type { Visit } from './replayed.ts';
import { constructionsByName } from './tyres.ts';

/**
 * What makes drops one sample of one strength. Tyres of two constructions are never pooled, nor are drops under two
 * configurations of a rig, on two kinds of rim, or read by two failure criteria. Null is "not told".
 */
export interface GroupKey {
  /** `id@revision` where the run has the document, else as the register has it. */
  readonly construction: string | null;
  readonly role: 'candidate' | 'reference';
  /** `id@config`. */
  readonly rig: string | null;
  /** Width and type of the rim, such as `25 mm TC`. */
  readonly rim: string | null;
  readonly criterion: string | null;
}

export interface Group {
  readonly key: GroupKey;
  /** What one rule steers: a construction on a rig. A change of rim or of the rig's configuration does not end it. */
  readonly strand: string;
  /** The strand for people: construction and, where told, rig. */
  readonly called: string;
  readonly visits: readonly Visit[];
}

/**
 * Parts the drops of a session into samples, those of the constructions that the run names first, in its order, and
 * reference constructions last. A hit of a reference or spare tyre is set aside, unless its construction is one that
 * the run names and no candidate is of: then it is a sample of its own, estimated and not judged. A drop of a tyre
 * that nobody knows stays in the series that it was made in.
 */
export function grouped(
  visits: readonly Visit[],
  constructions: readonly Construction[],
  rimOf: (visit: Visit) => string | null,
): readonly Group[] {
  const roles = rolesOf(visits, constructions);
  const groups = new Map<string, Collected>();
  const lastIn = new Map<string | null, Visit[]>();
  const strays: Visit[] = [];
  let text = '';
  let key: GroupKey | null = null;
  for (const visit of visits) {
    const { tyre, drop } = visit;
    if (tyre.stranger !== null) {
      const series = lastIn.get(drop.series);
      if (series === undefined) strays.push(visit);
      else series.push(visit);
      continue;
    }
    const role = roles(visit);
    if (role === null) {
      visit.use = 'set-aside';
      visit.steers = false;
      continue;
    }
    const construction = nameOf(visit);
    const rig = drop.details?.rig ?? null;
    const criterion = drop.details?.criterion ?? null;
    const rim = rimOf(visit);
    const same =
      key !== null &&
      key.construction === construction &&
      key.role === role &&
      key.rig === rig &&
      key.rim === rim &&
      key.criterion === criterion;
    if (!same) {
      key = { construction, role, rig, rim, criterion };
      text = JSON.stringify(key);
    }
    let group = groups.get(text);
    if (group === undefined) {
      group = { key: key!, visits: [] };
      groups.set(text, group);
    }
    group.visits.push(visit);
    lastIn.set(drop.series, group.visits);
  }
  return inOrder([...groups.values()], strays, constructions).map(({ key: found, visits: own }, index) => {
    for (const visit of own) visit.sample = index;
    const rigId = found.rig?.split('@')[0] ?? '';
    const parts = [found.construction ?? '', rigId];
    return {
      key: found,
      visits: own,
      strand: JSON.stringify([...parts, found.role]),
      called: parts.filter((part) => part !== '').join(' on '),
    };
  });
}

interface Collected {
  readonly key: GroupKey;
  readonly visits: Visit[];
}

/** Which part a visit's tyre plays: null where it is set aside. */
function rolesOf(visits: readonly Visit[], constructions: readonly Construction[]) {
  const others = visits.some(({ tyre }) => tyre.row?.role === 'reference' || tyre.row?.role === 'spare');
  if (!others) return () => 'candidate' as const;
  const named = constructionsByName(constructions);
  const candidates = new Set<string | null>();
  for (const visit of visits) {
    const role = visit.tyre.row?.role ?? 'candidate';
    if (role === 'candidate' && visit.tyre.stranger === null) candidates.add(nameOf(visit));
  }
  return (visit: Visit): GroupKey['role'] | null => {
    const { row } = visit.tyre;
    if (row?.role === 'spare') return null;
    if (row?.role !== 'reference') return 'candidate';
    const isNamed = row.construction !== null && named.has(row.construction);
    return isNamed && !candidates.has(nameOf(visit)) ? 'reference' : null;
  };
}

function nameOf({ tyre }: Visit): string | null {
  const { construction, row } = tyre;
  return construction === null ? (row?.construction ?? null) : `${construction.id}@${construction.revision}`;
}

function inOrder(
  groups: Collected[],
  strays: readonly Visit[],
  constructions: readonly Construction[],
): readonly Collected[] {
  const order = constructions.map(({ id, revision }) => `${id}@${revision}`);
  const rank = ({ key }: Collected) => {
    const place = key.construction === null ? -1 : order.indexOf(key.construction);
    return (key.role === 'reference' ? 2 : 0) * order.length + (place < 0 ? order.length : place);
  };
  groups.sort((a, b) => rank(a) - rank(b));
  if (strays.length === 0) return groups;
  const [first] = groups;
  if (first === undefined) return [{ key: NOTHING_TOLD, visits: [...strays] }];
  first.visits.push(...strays);
  first.visits.sort((a, b) => a.place - b.place);
  return groups;
}

const NOTHING_TOLD: GroupKey = {
  construction: null,
  role: 'candidate',
  rig: null,
  rim: null,
  criterion: null,
};

/** A sample's name among others: what it has that they do not share. Null for the only one. */
export function groupName(key: GroupKey, all: readonly GroupKey[]): string | null {
  if (all.length < 2) return null;
  const parts = (['construction', 'rig', 'rim', 'criterion'] as const).flatMap((part) => {
    if (all.every((other) => other[part] === key[part])) return [];
    const value = key[part];
    return [value === null ? `no ${part} told` : echo(value, 40)];
  });
  return parts.join(', ');
}
