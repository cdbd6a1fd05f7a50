import { spanOf } from '../logs/span.ts';
import type { MonitoredStandard, TouchedResult } from '../result/monitor.ts';
import { type DatedResult, mayBeRig } from './dated-results.ts';

/** How each stored result stands to the drifts that are open: measured after the last good point, on the rig, it is touched. */
export function touchedResults(
  results: readonly DatedResult[],
  standards: readonly MonitoredStandard[],
): TouchedResult[] {
  const drifts = standards.flatMap(({ rig, drift, standard }) =>
    drift === null ? [] : [{ rig, drift, standard }],
  );
  return results.map(({ path, run, rig, from, to, span }): TouchedResult => {
    const told = { path, run, rig, from, to };
    const own = drifts.filter((each) => mayBeRig(each.rig, rig));
    if (own.length === 0) {
      return {
        ...told,
        standing: 'clear',
        why: drifts.length === 0 ? 'no drift is open' : 'measured on another rig',
      };
    }
    if (span === null) {
      const why = 'the result does not say when it was measured; analyse it again from a log with times';
      return { ...told, standing: 'unknown', why };
    }
    const hit = own.find(({ drift }) => span.to >= sinceOf(drift));
    if (hit !== undefined) {
      const { lastGood } = hit.drift;
      const since =
        lastGood === null ? 'no check before it was good' : `the last good check was on ${lastGood}`;
      return { ...told, standing: 'touched', why: `measured while the rig may have been off: ${since}` };
    }
    return { ...told, standing: 'clear', why: 'measured before the last good check' };
  });
}

function sinceOf({ lastGood }: { readonly lastGood: string | null }): number {
  return lastGood === null ? -Infinity : (spanOf(lastGood, 'Z')?.from ?? -Infinity);
}
