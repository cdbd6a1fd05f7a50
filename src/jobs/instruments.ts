import type { LogSource } from '../logs/bytes.ts';
import { readCalibrations } from '../logs/calibrations.ts';
import { InputError } from '../problem/problem.ts';
import type { DoubtfulResult, InstrumentsResult } from '../result/instruments.ts';
import {
  coveredTo,
  type Doubt,
  doubtsOf,
  historiesOf,
  type InstrumentHistory,
  statusAt,
} from '../rig/instruments/register.ts';
import { type DatedResult, datedResults } from './dated-results.ts';

/**
 * What a calibration register says on a day: what is due, and which stored results used an instrument between its last good and its
 * first bad check, or past its due date.
 *
 * @param day as asked, and its end in ms since 1970
 * @param results files or folders of stored results
 * @throws InputError with the problems of the register, for an empty one, and for results that cannot be read
 */
export async function instruments(
  source: LogSource,
  day: { readonly date: string; readonly until: number },
  results: readonly string[],
): Promise<InstrumentsResult> {
  const { path, sha256, bytes, records } = await readCalibrations(source);
  if (records.length === 0) {
    const message =
      'found an empty register, expected a row for each calibration or check: instrument, time, result, due; without one no gauge of the lab is known to be right';
    throw new InputError([{ file: path, line: null, column: null, code: 'empty-register', message }]);
  }
  const histories = historiesOf(records);
  const statuses = histories.map((history) => statusAt(history, day.until));
  // What was found bad later was not known on that day.
  const known = historiesOf(records.filter(({ made }) => made < day.until));
  const doubts = known.flatMap(doubtsOf);
  const looked = datedResults(results).flatMap((result) => resultOf(result, histories, doubts));
  const needsAttention =
    statuses.some(({ standing }) => standing === 'overdue' || standing === 'failed') ||
    looked.some(({ standing }) => standing === 'touched' || standing === 'overdue');
  return {
    asOf: day.date,
    inputs: [{ role: 'checks', path, sha256, bytes, rows: records.length }],
    instruments: statuses,
    doubtful: doubts.map(({ begin: _begin, end: _end, ...period }) => period),
    results: looked,
    standing: needsAttention ? 'attention' : 'in-order',
  };
}

/** A result by each of its instruments that there is something to say of; one clear entry where there is none. */
function resultOf(
  { path, run, from, to, span, gauges }: DatedResult,
  histories: readonly InstrumentHistory[],
  doubts: readonly Doubt[],
): DoubtfulResult[] {
  const told = { path, run, from, to };
  if (span === null) {
    const why = 'the result does not say when it was measured';
    return [{ ...told, instrument: null, standing: 'unknown', why }];
  }
  if (gauges.length === 0) {
    const during = doubts.filter(({ begin, end }) => span.to > begin && span.from < end);
    const standing = during.length > 0 ? 'unknown' : 'clear';
    const names = [...new Set(during.map(({ instrument }) => instrument))].join(', ');
    const why =
      during.length > 0
        ? `its log names no gauge, and ${names} was in doubt then: find out what was used`
        : 'its log names no gauge, and none of the register was in doubt then';
    return [{ ...told, instrument: null, standing, why }];
  }
  return gauges.map((instrument): DoubtfulResult => {
    const history = histories.find((one) => one.instrument === instrument);
    if (history === undefined) {
      return { ...told, instrument, standing: 'unknown', why: 'the gauge is not in the register' };
    }
    const doubt = doubts.find(
      (one) => one.instrument === instrument && span.to > one.begin && span.from < one.end,
    );
    if (doubt !== undefined) {
      const since = doubt.from === null ? 'no good check before' : `last good check ${doubt.from}`;
      return { ...told, instrument, standing: 'touched', why: `${since}, found bad ${doubt.bad}` };
    }
    const until = coveredTo(history, span.to);
    if (until !== null && span.to > until) {
      return { ...told, instrument, standing: 'overdue', why: 'measured after the calibration was due' };
    }
    return { ...told, instrument, standing: 'clear', why: 'the gauge was good before and after' };
  });
}
