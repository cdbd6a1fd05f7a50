import type { DeviationList, Raised } from '../../conformance/deviation-list.ts';
import type { Drop } from '../../logs/drop.ts';
import type { Varied } from '../rules/levels.ts';
import type { Tyre } from './tyre.ts';

/**
 * What became of a drop.
 * - `used`: it steers the series and stands in the estimate;
 * - `invalid`: the log calls it invalid and gives a reason from the catalogue;
 * - `unexplained`: the log calls it invalid and gives none: the estimate is given without and with it;
 * - `left-out`: a check found that it cannot count; where it has an outcome it steered, because the operator acted
 *   on it;
 * - `ignored`: it came after its specimen had failed;
 * - `set-aside`: a hit of a reference or a spare tyre, which is no part of any series.
 */
export type Use = 'used' | 'invalid' | 'unexplained' | 'left-out' | 'ignored' | 'set-aside';

/** A drop with all that the replay found of it. */
export interface ReplayedDrop {
  readonly drop: Drop;
  readonly tyre: Tyre;
  /** What the operator saw and acted on: differs from the drop's outcome where that was amended later. */
  readonly acted: Drop['outcome'];
  /** One-based place in the log, or in all logs joined. */
  readonly place: number;
  readonly use: Use;
  /** The code that took it out of the estimate; null where it is used. */
  readonly because: string | null;
  /** Whether the rule's history has it: valid in the log, with an outcome. */
  readonly steers: boolean;
  /** The level that was set: the height in mm, or the mass in kg where the protocol varies it. */
  readonly setting: number;
  /** What the log itself planned to set; null where it does not say. */
  readonly plannedSetting: number | null;
  /** As a setting: what the rule asks for; null where it asks for nothing. */
  readonly ruleHeight: number | null;
  /** Index of the nearest level, from the start of the series; null where it does not steer. */
  readonly level: number | null;
  /** Number of the rise or the up-and-down series that it belongs to. */
  readonly path: number;
  /** Index of the sample whose strength it speaks of. */
  readonly sample: number;
}

/** The same while the replay is at work on it. */
export type Visit = { -readonly [Key in keyof ReplayedDrop]: ReplayedDrop[Key] };

/** @param varied what the protocol moves from drop to drop; a log whose mass moves states it for every drop. */
export function visiting(
  drop: Drop,
  index: number,
  tyre: Tyre,
  acted = drop.outcome,
  varied: Varied = 'height',
): Visit {
  const steers = drop.valid && (acted === 'failed' || acted === 'survived');
  return {
    drop,
    tyre,
    acted,
    place: index + 1,
    use: 'used',
    because: null,
    steers,
    setting: varied === 'height' ? drop.height : drop.mass!,
    plannedSetting: varied === 'height' ? drop.plannedHeight : null,
    ruleHeight: null,
    level: null,
    path: 0,
    sample: 0,
  };
}

/** Raises a deviation at a drop; one that invalidates the drop takes it out of the estimate. */
export function raiseAt(
  list: DeviationList,
  visit: Visit,
  code: string,
  found: () => string,
  more: Pick<Raised, 'severity' | 'scope' | 'effect'> = {},
): void {
  const { drop } = visit;
  const place = {
    file: drop.file,
    line: drop.line,
    specimen: drop.specimen,
    drop: drop.number ?? visit.place,
  };
  const { severity, scope, isHeavier } = list.add({ code, found, ...place, ...more });
  if (severity !== 'invalidating') return;
  if (isHeavier && scope === 'specimen') visit.tyre.condemnedBy ??= code;
  leaveOut(visit, code);
}

export function leaveOut(visit: Visit, code: string): void {
  const isOpen = visit.use === 'used' || (visit.use === 'ignored' && visit.steers);
  if (!isOpen) return;
  visit.use = 'left-out';
  visit.because = code;
}

/** Raises a deviation that takes a specimen's drops out of the estimate from here on. */
export function condemn(
  list: DeviationList,
  visit: Visit,
  code: string,
  found: () => string,
  more: Pick<Raised, 'severity' | 'scope' | 'effect'> = {},
): void {
  raiseAt(list, visit, code, found, { severity: 'invalidating', scope: 'specimen', ...more });
  visit.tyre.condemnedBy ??= code;
  sharesFate(visit);
}

/** Leaves out a drop of a specimen that was condemned before; it may not come back as an unexplained exclusion. */
export function sharesFate(visit: Visit): void {
  const { condemnedBy } = visit.tyre;
  if (condemnedBy === null) return;
  if (visit.use === 'unexplained') visit.use = 'invalid';
  leaveOut(visit, condemnedBy);
}
