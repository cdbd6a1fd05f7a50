import type { DeviationList } from '../../conformance/deviation-list.ts';
import { checkAges } from './ages.ts';
import { checkConfiguration } from './configuration.ts';
import { checkDrift } from './drift.ts';
import { checkNominals } from './nominals.ts';
import { checkOrder } from './order.ts';
import { checkRests } from './rests.ts';
import { checkRigChecks } from './rig-checks.ts';
import type { Session } from './session.ts';

/**
 * What only a whole session shows: its days, its order, its configurations, its groups.
 *
 * @returns why the numbers wait for something to be settled.
 */
export function checkSession(session: Session, list: DeviationList): readonly string[] {
  checkConfiguration(session, list);
  checkDrift(session, list);
  checkRests(session, list);
  checkOrder(session, list);
  checkAges(session, list);
  checkNominals(session, list);
  return checkRigChecks(session, list);
}
