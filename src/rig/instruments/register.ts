import type { Calibration } from '../../logs/calibrations.ts';
import type { DoubtfulPeriod, InstrumentStatus } from '../../result/instruments.ts';
import { grouped } from '../../statistics/summary/grouped.ts';

/** Days ahead within which a due calibration is called due: time to book it (common practice, no source). */
const AHEAD = 30 * 86_400_000;

/** The checks of one instrument in order of time. */
export interface InstrumentHistory {
  readonly instrument: string;
  readonly checks: readonly Calibration[];
}

/** The instruments of a register in the order in which they first come. */
export function historiesOf(calibrations: readonly Calibration[]): InstrumentHistory[] {
  return grouped(calibrations, ({ instrument }) => instrument).map(([instrument, checks]) => ({
    instrument,
    checks: checks.toSorted((a, b) => a.made - b.made),
  }));
}

/** How an instrument stands at an instant: checks made later are not known yet. */
export function statusAt({ instrument, checks }: InstrumentHistory, until: number): InstrumentStatus {
  const known = checks.filter(({ made }) => made < until);
  const last = known.at(-1);
  const good = known.findLast(({ passed }) => passed);
  const bad = known.findLast(({ passed }) => !passed);
  const standing = ((): InstrumentStatus['standing'] => {
    if (last !== undefined && !last.passed) return 'failed';
    if (good?.holdsTo == null) return 'not-dated';
    if (good.holdsTo < until - 1) return 'overdue';
    return good.holdsTo < until + AHEAD ? 'due' : 'in-date';
  })();
  return {
    instrument,
    quantity: known.find(({ quantity }) => quantity !== null)?.quantity ?? null,
    checks: known.length,
    lastGood: good?.time ?? null,
    lastBad: bad?.time ?? null,
    due: good?.due ?? null,
    certificate: known.findLast(({ certificate }) => certificate !== null)?.certificate ?? null,
    standing,
  };
}

/** A doubtful period with its ends in ms since 1970. */
export interface Doubt extends DoubtfulPeriod {
  readonly begin: number;
  readonly end: number;
}

/** From each last good check to the next good one, where the first check between them was bad. */
export function doubtsOf({ instrument, checks }: InstrumentHistory): Doubt[] {
  return checks.flatMap((bad, i) => {
    if (bad.passed || (i > 0 && !checks[i - 1]!.passed)) return [];
    const before = checks[i - 1];
    const after = checks.slice(i).find(({ passed }) => passed);
    return [
      {
        instrument,
        from: before?.time ?? null,
        bad: bad.time,
        to: after?.time ?? null,
        settled: bad.settled,
        begin: before?.made ?? Number.NEGATIVE_INFINITY,
        end: after?.made ?? Number.POSITIVE_INFINITY,
      },
    ];
  });
}

/** The last instant at which a use of the instrument was covered by a good calibration that was known then; null for none. */
export function coveredTo({ checks }: InstrumentHistory, at: number): number | null {
  return checks.findLast(({ made, passed }) => passed && made <= at)?.holdsTo ?? null;
}
