import type { DeviationList } from '../../conformance/deviation-list.ts';
import type { ImpactProtocol } from '../../documents/kinds.ts';
import { quote } from '../../problem/echo.ts';
import { raiseAt, type Visit } from './replayed.ts';

/**
 * Retires specimens that failed: later rows of them are ignored (DROP-34). With `afterFailure: new-site` only the
 * failed spot is retired, where spots are hit again and again; elsewhere a used site is DROP-31's to find.
 */
export function retirement(
  protocol: Pick<ImpactProtocol, 'sites' | 'afterFailure' | 'method'>,
  siteNumber: (specimen: string, angle: number | null) => number,
) {
  const failedOn = new Map<string, number>();
  const bySite = protocol.afterFailure === 'new-site';
  const isWatched = !bySite || protocol.sites.each !== 'new-spot';
  const keyOf = ({ drop }: Visit) =>
    bySite ? `${siteNumber(drop.specimen, drop.site)}\n${drop.specimen}` : drop.specimen;

  return {
    /** Raises DROP-34 and sets the drop aside where its specimen has failed before. */
    check(visit: Visit, list: DeviationList): void {
      const line = isWatched ? failedOn.get(keyOf(visit)) : undefined;
      if (line === undefined) return;
      const spot = bySite ? 'this site of ' : '';
      raiseAt(
        list,
        visit,
        'DROP-34',
        () => `${spot}${quote(visit.drop.specimen)} had failed on line ${line}`,
      );
      visit.use = 'ignored';
      visit.because = 'DROP-34';
      // An up-and-down operator set the next height by what this row says; a rise is simply over.
      if (protocol.method === 'rising-height') visit.steers = false;
    },
    /** Takes note of a failure that counts. */
    note(visit: Visit): void {
      if (isWatched && visit.steers && visit.drop.outcome === 'failed' && !failedOn.has(keyOf(visit))) {
        failedOn.set(keyOf(visit), visit.drop.line);
      }
    },
  };
}
