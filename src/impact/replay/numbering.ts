import type { DeviationList } from '../../conformance/deviation-list.ts';
import type { ImpactProtocol } from '../../documents/kinds.ts';
import type { Drop } from '../../logs/drop.ts';
import { counted } from '../../quantity/format.ts';
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
 * first one (a rig's counter), or from 1 within each file, series or specimen where that is what the log does. It is
 * told whether a missing drop may have been a failure: only then may a protocol weigh it heavier.
 */
export function checkNumbering(
  visits: readonly Visit[],
  protocol: ImpactProtocol,
  list: DeviationList,
): void {
  if (visits.every(({ drop }) => drop.number === null)) return;
  let best: Fault[] | null = null;
  for (const { groupOf, restarts } of SCHEMES) {
    const faults = faultsOf(visits, groupOf, restarts, best?.length ?? Infinity);
    if (faults !== null) best = faults;
    if (best?.length === 0) return;
  }
  for (const { visit, expected } of best ?? []) {
    const { number } = visit.drop;
    const missing = number === null ? 0 : number - expected;
    const held = missing > 0 ? whyHeld(visits[visit.place - 2] ?? null, visit, missing, protocol) : '';
    const found = () => {
      if (number === null) return `no drop number, expected ${expected}`;
      if (missing <= 0) return `drop number ${number} a second time or going back, expected ${expected}`;
      const what = held ?? `${missing === 1 ? 'the missing drop' : 'a missing one'} may have been a failure`;
      return `drop number ${number} after a gap of ${counted(missing, 'drop')}, expected ${expected}; ${what}`;
    };
    raiseAt(list, visit, 'DROP-49', found, held === null ? {} : { severity: 'minor' });
  }
}

/** Why missing drops cannot have been failures; null where one may have been. */
function whyHeld(
  before: Visit | null,
  visit: Visit,
  missing: number,
  { method, afterFailure, step }: ImpactProtocol,
): string | null {
  // Without an outcome to go on from, nothing is known of what the operator would have done.
  if (before?.acted !== 'failed' && before?.acted !== 'survived') return null;
  if (before.tyre === visit.tyre && before.acted === 'survived' && afterFailure === 'retire') {
    return 'the tyre was hit again, so it had held';
  }
  if (method !== 'up-and-down' || missing !== 1 || step === null) return null;
  // A drop between that counted would have moved the height once more, back or on.
  const size = step.kind === 'additive' ? step.size : step.ratio * before.setting;
  const moves = ((visit.setting - before.setting) * (before.acted === 'failed' ? -1 : 1)) / size;
  return moves > 0.5 && moves < 1.5 ? 'the height follows from the drop before it' : null;
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
