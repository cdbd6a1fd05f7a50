import type { DeviationList } from '../../conformance/deviation-list.ts';
import { raiseAt, type Visit } from './replayed.ts';

/** Raises DROP-16 for a rebound that hit again, DROP-17 for a catcher that took the mass before its impact. */
export function checkBlows(visit: Visit, list: DeviationList): void {
  const { details, valid } = visit.drop;
  if (details == null || !valid) return;
  const { hits, catcher } = details;
  if (catcher === 'early') {
    raiseAt(list, visit, 'DROP-17', () => 'the catcher touched the mass before its impact');
  } else if (hits !== null && hits > 1) {
    raiseAt(list, visit, 'DROP-16', () => `${hits} hits counted, expected one`);
  } else if (catcher === 'missed') {
    raiseAt(list, visit, 'DROP-16', () => 'the catcher missed the mass, which hit again');
  }
}
