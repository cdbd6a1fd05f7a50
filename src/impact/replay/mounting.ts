import { type Mounting, registeredMounting } from '../../logs/mountings.ts';
import { upTo } from '../../quantity/format.ts';
import type { Visit } from './replayed.ts';
import type { Tyre } from './tyre.ts';

/** Which mounting a drop was made with. */
export interface Mountings {
  of(visit: Pick<Visit, 'drop' | 'tyre' | 'place'>): Mounting | null;
  /** Whether anything at all is known. */
  readonly all: readonly Mounting[];
}

/** The table of mountings goes before what the register says; each holds from its drop to the next one's. */
export function mountingsOf(table: readonly Mounting[]): Mountings {
  const bySpecimen = new Map<string, Mounting[]>();
  for (const mounting of table) {
    const same = bySpecimen.get(mounting.specimen);
    if (same === undefined) bySpecimen.set(mounting.specimen, [mounting]);
    else same.push(mounting);
  }
  for (const same of bySpecimen.values()) same.sort((a, b) => (a.fromDrop ?? 0) - (b.fromDrop ?? 0));
  const registered = new Map<Tyre, Mounting | null>();
  return {
    all: table,
    of({ tyre, drop, place }) {
      const own = bySpecimen.get(tyre.name);
      if (own !== undefined) {
        const number = drop.number ?? place;
        return own.findLast(({ fromDrop }) => fromDrop === null || fromDrop <= number) ?? null;
      }
      if (tyre.row === null) return null;
      let mounting = registered.get(tyre);
      if (mounting === undefined) {
        mounting = registeredMounting(tyre.row);
        registered.set(tyre, mounting);
      }
      return mounting;
    },
  };
}

/** Width and type of a rim as they part samples: `25 mm TC`; null where neither is told. */
export function rimKind(mounting: Mounting | null): string | null {
  if (mounting === null) return null;
  const { rimWidth, rimType } = mounting;
  if (rimWidth === null && rimType === null) return null;
  return [rimWidth === null ? null : `${upTo(rimWidth, 1)} mm`, rimType]
    .filter((part) => part !== null)
    .join(' ');
}
