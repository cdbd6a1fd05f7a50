import type { DeviationList } from '../../conformance/deviation-list.ts';
import { hitsAllowed } from '../rules/method-rules.ts';
import { admit } from './admission.ts';
import { checkBlows } from './blows.ts';
import {
  checkFixedHeight,
  checkMass,
  checkPressure,
  checkTemperature,
  plannedPressure,
  unrecorded,
} from './conditions.ts';
import { checkDamage, damageNotes } from './damage.ts';
import { checkMounting } from './mounting-checks.ts';
import { checkNumbering } from './numbering.ts';
import { checkPreparation } from './preparation.ts';
import { pressureWatch } from './pressure-watch.ts';
import { checkReadings } from './readings.ts';
import { sharesFate } from './replayed.ts';
import { retestWatch } from './retests.ts';
import { retirement } from './retirement.ts';
import type { Session } from './session.ts';
import { hitCount, siteWatch } from './sites.ts';
import { checkStatedMasses } from './stated-masses.ts';
import { checkTightness, leakCheckNotes } from './tightness.ts';
import { torqueNotes } from './torque.ts';
import { checkMembership } from './tyres.ts';
import { checkVelocity, checkVelocityCoverage } from './velocity.ts';

/** What a drop shows by itself and by the hits on its specimen before it, in the order of the log. */
export function checkEachDrop(session: Session, list: DeviationList): string[] {
  const { protocol, scale, visits, columns } = session;
  const retired = retirement(protocol);
  const watchSite = siteWatch(protocol.sites);
  const watchPressure = pressureWatch();
  const countHit = hitCount(protocol.sites, hitsAllowed(protocol));
  const mounted = checkMounting(session);
  const watchRetest = retestWatch(session);
  let met = -1;
  let unsettled = 0;
  checkStatedMasses(session, list);
  checkNumbering(visits, protocol, list);
  for (const visit of visits) {
    const isFirst = visit.tyre.index > met;
    if (isFirst) met = visit.tyre.index;
    admit(visit, list);
    checkMembership(visit, isFirst, list);
    checkBlows(visit, list);
    if (isFirst) watchRetest(visit, list);
    if (isFirst) checkPreparation(visit, protocol, list);
    else sharesFate(visit);
    const wasPatched = mounted(visit, list);
    if (!visit.drop.valid) {
      watchSite(visit, false, list);
      continue;
    }
    if (visit.use !== 'set-aside') retired.check(visit, wasPatched, list);
    if (visit.use === 'ignored' && !visit.steers) continue;
    const pressure = plannedPressure(protocol, visit.tyre.construction);
    if (pressure === null && protocol.pressure !== null) unsettled += 1;
    if (protocol.vary === 'mass') checkFixedHeight(visit, protocol, list);
    else checkMass(visit, scale.statedMassOf(visit.drop), list);
    checkPressure(visit, pressure, list);
    watchPressure(visit, pressure, list);
    checkTemperature(visit, protocol.temperature, list);
    checkVelocity(visit, protocol.energy, scale.gravityOf(visit.drop).value, list);
    checkDamage(visit, protocol, list);
    checkReadings(visit, list);
    checkTightness(visit, protocol, pressure, list);
    if (visit.use !== 'set-aside') {
      watchSite(visit, visit.steers, list);
      if (visit.steers) countHit(visit, list);
    }
    retired.note(visit);
  }
  checkVelocityCoverage(visits, columns, protocol.energy, list);
  return [
    ...unrecorded(protocol, visits, unsettled),
    ...leakCheckNotes(visits, protocol),
    ...torqueNotes(session),
    ...damageNotes(visits),
  ];
}
