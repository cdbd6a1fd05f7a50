import type { DeviationList } from '../../conformance/deviation-list.ts';
import type { Drop } from '../../logs/drop.ts';
import { raiseAt, type Visit } from './replayed.ts';

type GroupOf = (drop: Drop) => string;

/** Ways in which rigs number their drops; the first that fits the log best is taken for the one meant. */
const SCHEMES: readonly { readonly groupOf: GroupOf; readonly restarts: boolean }[] = [
  { groupOf: () => '', restarts: false },
  { groupOf: (drop) => drop.file, restarts: true },
  { groupOf: (drop) => `${drop.series}`, restarts: true },
  { groupOf: (drop) => `${drop.file}\n${drop.series}`, restarts: true },
  { groupOf: (drop) => `${drop.series}\n${drop.specimen}`, restarts: true },
];

interface Fault {
  readonly visit: Visit;
  readonly expected: number;
}

/**
 * Raises DROP-49 for drop numbers that are missing, doubled or going back. Numbers run over the whole log from any
 * first one (a rig's counter), or from 1 within each file, series or specimen where that is what the log does.
 */
export function checkNumbering(visits: readonly Visit[], list: DeviationList): void {
  if (visits.every(({ drop }) => drop.number === null)) return;
  let best: Fault[] | null = null;
  for (const { groupOf, restarts } of SCHEMES) {
    const faults = faultsOf(visits, groupOf, restarts, best?.length ?? Infinity);
    if (faults !== null) best = faults;
    if (best?.length === 0) return;
  }
  for (const { visit, expected } of best ?? []) {
    raiseAt(list, visit, 'DROP-49', () => {
      const { number } = visit.drop;
      if (number === null) return `no drop number, expected ${expected}`;
      const how = number > expected ? 'after a gap' : 'a second time or going back';
      return `drop number ${number} ${how}, expected ${expected}`;
    });
  }
}

/** The rows that break a scheme; null as soon as they are as many as `most`. */
function faultsOf(
  visits: readonly Visit[],
  groupOf: GroupOf,
  restarts: boolean,
  most: number,
): Fault[] | null {
  // After a fault the count may go on from the odd number, or as if that number had been a slip.
  const next = new Map<string, { readonly expected: number; readonly also: number }>();
  const faults: Fault[] = [];
  for (const visit of visits) {
    const { number } = visit.drop;
    const group = groupOf(visit.drop);
    const state = next.get(group);
    const expected = state?.expected ?? (restarts ? 1 : (number ?? 1));
    if (number !== null && (number === expected || number === state?.also)) {
      next.set(group, { expected: number + 1, also: number + 1 });
      continue;
    }
    faults.push({ visit, expected });
    if (faults.length >= most) return null;
    next.set(group, { expected: expected + 1, also: (number ?? expected) + 1 });
  }
  return faults;
}
