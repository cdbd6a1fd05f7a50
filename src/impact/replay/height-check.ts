import type { DeviationList } from '../../conformance/deviation-list.ts';
import { height } from '../../quantity/format.ts';
import { raiseAt, type Visit } from './replayed.ts';

/** Half a step and a whole tolerance are still within themselves. */
const SLACK = 1e-6;

/** What the rule asks for at a drop, and how far the log may be from it. */
export interface Asked {
  /** mm. */
  readonly height: number;
  /** Other heights that are as right, such as the repeat of a drop that a check left out. */
  readonly also: readonly number[];
  /** mm between neighbouring levels there. */
  readonly step: number;
  readonly tolerance: number;
}

/** Whether a drop was made at a height that the rule asks for. */
export function isAsAsked(visit: Visit, asked: Asked): boolean {
  return [asked.height, ...asked.also].some((wanted) => isNear(visit.drop.height, wanted, asked.tolerance));
}

export function isNear(one: number, other: number, tolerance: number): boolean {
  return Math.abs(one - other) <= tolerance + SLACK;
}

/**
 * Whether a height that is not as asked was set wrongly (DROP-01) rather than planned wrongly: it is off by half a
 * step at most, or the log's own plan was right.
 */
export function isSettingError(visit: Visit, asked: Asked): boolean {
  const { height: set, plannedHeight } = visit.drop;
  if (isNear(set, asked.height, asked.step / 2)) return true;
  return plannedHeight !== null && isNear(plannedHeight, asked.height, asked.tolerance);
}

export function raiseSettingError(visit: Visit, asked: Asked, list: DeviationList): void {
  raiseAt(
    list,
    visit,
    'DROP-01',
    () => `height ${height(visit.drop.height)}, planned ${height(asked.height)} ± ${height(asked.tolerance)}`,
  );
}

/** Raises DROP-01 where the log plans one height and sets another, though the rule has nothing against the latter. */
export function checkOwnPlan(visit: Visit, tolerance: number, list: DeviationList): boolean {
  const { height: set, plannedHeight } = visit.drop;
  if (plannedHeight === null || isNear(set, plannedHeight, tolerance)) return false;
  raiseAt(
    list,
    visit,
    'DROP-01',
    () => `height ${height(set)}, the log itself planned ${height(plannedHeight)}`,
  );
  return true;
}

/** What a step of another size or direction looked like, for messages. */
export function moved(visit: Visit, before: Visit): string {
  const from = before.drop.height;
  const to = visit.drop.height;
  const how = to > from ? 'raised' : 'lowered';
  const move = to === from ? `stayed at ${height(to)}` : `${how} from ${height(from)} to ${height(to)}`;
  return `${move} after line ${before.drop.line} ${before.acted}`;
}
