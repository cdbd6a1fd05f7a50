import type { DeviationList } from '../../conformance/deviation-list.ts';
import { quote } from '../../problem/echo.ts';
import { upTo } from '../../quantity/format.ts';
import { band, type Quantity } from '../../quantity/quantity.ts';
import { raiseAt, type Visit } from './replayed.ts';
import { pastOf } from './tyre.ts';

/** Hits in a row with less pressure each, and K between setting and hitting. Common practice, no source. */
const FALLS = 3;
const APART = 3;
const TOLERANCE = 0.05;
/** Tolerances that a fall must pass in all: gauges set anew within three fifths of the tolerance never do by chance. */
const MARGIN = 1.2;
const SLACK = 1e-9;

/**
 * Raises DROP-22, once a specimen, where its pressure falls from hit to hit, three times in a row and clearly more than
 * its tolerance in all: nobody set it again. Raises DROP-23 where it was set at another temperature than that of the hit.
 */
export function pressureWatch() {
  return (visit: Visit, planned: Quantity | null, list: DeviationList): void => {
    const { pressure, temperature, details } = visit.drop;
    const set = details?.setTemperature ?? null;
    if (set !== null && temperature !== null && Math.abs(set - temperature) > APART + SLACK) {
      const found = () =>
        `pressure set at ${upTo(set, 1)} °C, hit at ${upTo(temperature, 1)} °C, more than ${APART} K apart`;
      raiseAt(list, visit, 'DROP-23', found);
    }
    if (pressure !== null) watch(visit, pressure, planned, list);
  };

  function watch(visit: Visit, pressure: number, planned: Quantity | null, list: DeviationList): void {
    const { tyre } = visit;
    const past = pastOf(tyre);
    const before = past.pressure;
    past.pressure = pressure;
    if (before === null || pressure >= before - SLACK) {
      // A tyre that was told of is not told of again.
      if (past.falls <= FALLS) past.falls = 0;
      return;
    }
    if (past.falls === 0) past.fallFrom = before;
    if (past.falls > FALLS) return;
    past.falls = Math.min(FALLS, past.falls + 1);
    const limits = planned === null ? null : band(planned);
    const tolerance = planned === null || limits === null ? TOLERANCE : limits.upper - planned.value;
    const { fallFrom } = past;
    if (past.falls < FALLS || fallFrom - pressure <= MARGIN * tolerance + SLACK) return;
    past.falls = FALLS + 1;
    const found = () =>
      `pressure of ${quote(tyre.name)} fell from hit to hit, from ${upTo(fallFrom, 3)} to ${upTo(pressure, 3)} bar`;
    raiseAt(list, visit, 'DROP-22', found, { scope: 'specimen' });
  }
}
