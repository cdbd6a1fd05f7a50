import { catalogued } from '../../conformance/catalogue/catalogue.ts';
import type { DeviationList, Raised } from '../../conformance/deviation-list.ts';
import type { Drop } from '../../logs/drop.ts';

/**
 * What became of a drop.
 * - `used`: it steers the series and stands in the estimate;
 * - `invalid`: the log calls it invalid and gives a reason from the catalogue;
 * - `unexplained`: the log calls it invalid and gives none: the estimate is given without and with it;
 * - `left-out`: a check found that it cannot count; where it has an outcome it steered, because the operator acted
 *   on it;
 * - `ignored`: it came after its specimen had failed.
 */
export type Use = 'used' | 'invalid' | 'unexplained' | 'left-out' | 'ignored';

/** A drop with all that the replay found of it. */
export interface ReplayedDrop {
  readonly drop: Drop;
  /** One-based place in the log, or in all logs joined. */
  readonly place: number;
  readonly use: Use;
  /** The code that took it out of the estimate; null where it is used. */
  readonly because: string | null;
  /** Whether the rule's history has it: valid in the log, with an outcome. */
  readonly steers: boolean;
  /** mm: what the rule asks for; null where it asks for nothing. */
  readonly ruleHeight: number | null;
  /** Index of the nearest level, from the start of the series; null where it does not steer. */
  readonly level: number | null;
  /** Number of the rise or the up-and-down series that it belongs to. */
  readonly path: number;
}

/** The same while the replay is at work on it. */
export type Visit = { -readonly [Key in keyof ReplayedDrop]: ReplayedDrop[Key] };

export function visiting(drop: Drop, index: number): Visit {
  const steers = drop.valid && (drop.outcome === 'failed' || drop.outcome === 'survived');
  return {
    drop,
    place: index + 1,
    use: 'used',
    because: null,
    steers,
    ruleHeight: null,
    level: null,
    path: 0,
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
  list.add({ code, found, ...place, ...more });
  if ((more.severity ?? catalogued(code).severity) === 'invalidating') leaveOut(visit, code);
}

export function leaveOut(visit: Visit, code: string): void {
  const isOpen = visit.use === 'used' || (visit.use === 'ignored' && visit.steers);
  if (!isOpen) return;
  visit.use = 'left-out';
  visit.because = code;
}
