import type { Scope, Severity } from '../deviation.ts';

/** What a departure weighs where a protocol says that it weighs more than as a rule. */
export interface Heavier {
  readonly severity: Exclude<Severity, 'note'>;
  readonly scope: Scope;
}

const INVALID_DROP: Heavier = { severity: 'invalidating', scope: 'drop' };
const INVALID_SPECIMEN: Heavier = { severity: 'invalidating', scope: 'specimen' };
const INVALID_RUN: Heavier = { severity: 'invalidating', scope: 'run' };
const MINOR_DROP: Heavier = { severity: 'minor', scope: 'drop' };

/**
 * The departures of a drop test that a lab may weigh in two ways: the milder holds, unless the protocol names the code
 * (`severities`). Common practice, no source.
 */
export const HEAVIER: ReadonlyMap<string, Heavier> = new Map([
  ['DROP-03', INVALID_DROP],
  ['DROP-11', INVALID_DROP],
  ['DROP-12', INVALID_DROP],
  ['DROP-18', INVALID_DROP],
  ['DROP-21', INVALID_DROP],
  ['DROP-24', INVALID_RUN],
  ['DROP-25', INVALID_DROP],
  ['DROP-26', INVALID_SPECIMEN],
  ['DROP-32', INVALID_DROP],
  ['DROP-36', INVALID_DROP],
  ['DROP-38', INVALID_SPECIMEN],
  ['DROP-43', MINOR_DROP],
  ['DROP-49', INVALID_DROP],
  ['DROP-50', MINOR_DROP],
  ['DROP-55', { severity: 'invalidating', scope: 'comparison' }],
]);
