import type { DeviationList } from '../../conformance/deviation-list.ts';
import { height } from '../../quantity/format.ts';
import { sayer, type Varied } from '../rules/levels.ts';
import { raiseAt, type Visit } from './replayed.ts';

/** Half a step and a whole tolerance are still within themselves. */
const SLACK = 1e-6;

/** What the rule asks for at a drop, and how far the log may be from it. */
export interface Asked {
  /** mm, or kg where the mass is varied. */
  readonly height: number;
  /** Other heights that are as right, such as the repeat of a drop that a check left out. */
  readonly also: readonly number[];
  /** mm between neighbouring levels there. */
  readonly step: number;
  readonly tolerance: number;
}

/** Whether a drop was made at a height that the rule asks for. */
export function isAsAsked(visit: Visit, asked: Asked): boolean {
  return [asked.height, ...asked.also].some((wanted) => isNear(visit.setting, wanted, asked.tolerance));
}

export function isNear(one: number, other: number, tolerance: number): boolean {
  return Math.abs(one - other) <= tolerance + SLACK;
}

/**
 * Whether a height that is not as asked was set wrongly (DROP-01) rather than planned wrongly: it is off by half a
 * step at most, or the log's own plan was right.
 */
export function isSettingError(visit: Visit, asked: Asked): boolean {
  const { setting, plannedSetting } = visit;
  if (isNear(setting, asked.height, asked.step / 2)) return true;
  return plannedSetting !== null && isNear(plannedSetting, asked.height, asked.tolerance);
}

export function raiseSettingError(visit: Visit, asked: Asked, varied: Varied, list: DeviationList): void {
  const say = sayer(varied);
  raiseAt(
    list,
    visit,
    varied === 'height' ? 'DROP-01' : 'DROP-11',
    () => `${varied} ${say(visit.setting)}, planned ${say(asked.height)} ± ${say(asked.tolerance)}`,
  );
}

/** Raises DROP-01 where the log plans one height and sets another, though the rule has nothing against the latter. */
export function checkOwnPlan(visit: Visit, tolerance: number, list: DeviationList): boolean {
  const { setting, plannedSetting } = visit;
  if (plannedSetting === null || isNear(setting, plannedSetting, tolerance)) return false;
  raiseAt(
    list,
    visit,
    'DROP-01',
    () => `height ${height(setting)}, the log itself planned ${height(plannedSetting)}`,
  );
  return true;
}

/** What a step of another size or direction looked like, for messages. */
export function moved(visit: Visit, before: Visit, varied: Varied = 'height'): string {
  const say = sayer(varied);
  const from = before.setting;
  const to = visit.setting;
  const how = to > from ? 'raised' : 'lowered';
  const move = to === from ? `stayed at ${say(to)}` : `${how} from ${say(from)} to ${say(to)}`;
  return `${move} after line ${before.drop.line} ${before.acted}`;
}
