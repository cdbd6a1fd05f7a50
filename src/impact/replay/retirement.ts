import type { DeviationList } from '../../conformance/deviation-list.ts';
import type { ImpactProtocol } from '../../documents/kinds.ts';
import { quote } from '../../problem/echo.ts';
import { raiseAt, type Visit } from './replayed.ts';
import { siteNumber } from './sites.ts';
import { pastOf } from './tyre.ts';

/**
 * Retires specimens that failed: later rows of them are ignored (DROP-34). With `afterFailure: new-site` only the
 * failed spot is retired, where spots are hit again and again; elsewhere a used site is DROP-31's to find.
 */
export function retirement(protocol: Pick<ImpactProtocol, 'sites' | 'afterFailure' | 'method'>) {
  const bySite = protocol.afterFailure === 'new-site';
  const isWatched = !bySite || protocol.sites.each !== 'new-spot';
  const failedOn = ({ tyre, drop }: Visit): number | null =>
    bySite ? (tyre.past?.failedSites?.get(siteNumber(tyre, drop.site)) ?? null) : tyre.failedLine;

  return {
    /** @param isTold whether another deviation says already that the series went on after the failure. Raises DROP-34 and sets the drop aside where its specimen has failed before. */
    check(visit: Visit, isTold: boolean, list: DeviationList): void {
      const line = isWatched ? failedOn(visit) : null;
      if (line === null) return;
      const spot = bySite ? 'this site of ' : '';
      const found = () => `${spot}${quote(visit.drop.specimen)} had failed on line ${line}`;
      if (!isTold) raiseAt(list, visit, 'DROP-34', found);
      visit.use = 'ignored';
      visit.because = 'DROP-34';
      // An up-and-down operator set the next height by what this row says; a rise is simply over.
      if (protocol.method === 'rising-height') visit.steers = false;
    },
    /** Takes note of a failure that counts. */
    note(visit: Visit): void {
      const { tyre, drop } = visit;
      if (!isWatched || !visit.steers || drop.outcome !== 'failed' || failedOn(visit) !== null) return;
      tyre.failedLine ??= drop.line;
      if (!bySite) return;
      const past = pastOf(tyre);
      past.failedSites ??= new Map();
      past.failedSites.set(siteNumber(tyre, drop.site), drop.line);
    },
  };
}
