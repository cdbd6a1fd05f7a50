import type { Scope, Severity } from '../deviation.ts';
import type { CatalogueEntry } from './entry.ts';

// Limits and severities: common practice, no source, unless a check says otherwise.

const OUT_OF_LEDGER = 'these kilometres do not count as run at the set condition';
const UNVERIFIED = 'these kilometres stand apart as unverified';

/** Departures of a drum test do not speak of single drops, so none excuses one. */
const entry = (
  code: string,
  title: string,
  severity: Severity,
  scope: Scope,
  effect: string,
): CatalogueEntry => ({ code, title, severity, scope, effect, excuses: false });

/** What a drum log shows by itself, what outcomes and inspections show, and what the lab noted as an event. */
export const DRUM_CATALOGUE: readonly CatalogueEntry[] = [
  entry('DRUM-01', 'speed outside its limits', 'minor', 'interval', OUT_OF_LEDGER),
  entry('DRUM-02', 'load outside its limits', 'minor', 'interval', OUT_OF_LEDGER),
  entry('DRUM-03', 'load arm lifted while the drum turned', 'minor', 'interval', OUT_OF_LEDGER),
  entry('DRUM-04', 'kilometres counted while the drum stood', 'minor', 'interval', OUT_OF_LEDGER),
  entry(
    'DRUM-05',
    'counter, speed and revolutions disagree on the distance',
    'minor',
    'run',
    'the counter is used; look for a wrong diameter, a slipping pick-up or a jump',
  ),
  entry(
    'DRUM-09',
    'pressure topped up',
    'minor',
    'interval',
    'in a test with the valve closed the pressure is not corrected; its slope begins anew',
  ),
  entry('DRUM-10', 'pressure below its limits', 'minor', 'interval', OUT_OF_LEDGER),
  entry(
    'DRUM-11',
    'a sensor without a reading, frozen or saturated',
    'minor',
    'interval',
    'its readings prove nothing here; rely on inspections',
  ),
  entry('DRUM-12', 'pressure above its limits', 'minor', 'interval', OUT_OF_LEDGER),
  entry('DRUM-13', 'ambient temperature outside its limits', 'minor', 'interval', OUT_OF_LEDGER),
  entry('DRUM-15', 'cooling by a fan', 'minor', 'interval', 'the tyre ran cooler than the protocol asks'),
  entry('DRUM-17', 'interruption', 'note', 'interval', 'the tyre cooled down and started again cold'),
  entry(
    'DRUM-18',
    'wheel standing under load',
    'minor',
    'interval',
    'a flat spot may have formed; look at vibration and growth',
  ),
  entry('DRUM-19', 'gap in the log while the drum ran', 'minor', 'interval', UNVERIFIED),
  entry(
    'DRUM-20',
    'gap in the log across which the counter began anew',
    'invalidating',
    'interval',
    'the distance run in it is not known; take it from the inspections',
  ),
  entry(
    'DRUM-21',
    'clock stepped',
    'note',
    'interval',
    'the counter orders the rows, time is not known better',
  ),
  entry(
    'DRUM-23',
    'looks too far apart for a life',
    'note',
    'specimen',
    'the life is an interval, and no point is read into it',
  ),
  entry(
    'DRUM-24',
    'reading taken hot',
    'minor',
    'specimen',
    'this reading is left out of the wear line: rubber and air are larger hot than cold',
  ),
  entry(
    'DRUM-25',
    'tread read at other points than before',
    'minor',
    'specimen',
    'means of other points scatter more: the wear line is less sure than it says',
  ),
  entry(
    'DRUM-26',
    'wheel mounted again',
    'minor',
    'specimen',
    'another direction or position begins another pattern of wear',
  ),
  entry(
    'DRUM-27',
    'tyre moved to another position or drum',
    'minor',
    'specimen',
    'look whether the drums differ before its life is pooled with others',
  ),
  entry(
    'DRUM-28',
    'failure of a part that is not the tyre',
    'note',
    'specimen',
    'the tyre counts as taken off unfailed at the distance that it survived',
  ),
  entry(
    'DRUM-31',
    'taken off early by request',
    'note',
    'specimen',
    'a suspension; if it was taken off because of how it looked, it says more than that it lasted so far',
  ),
  entry(
    'DRUM-36',
    'surface of the drum changed',
    'minor',
    'interval',
    'wear before and after is not comparable',
  ),
  entry('DRUM-37', 'debris on the drum', 'minor', 'interval', 'look whether the tyre was cut by it'),
  entry(
    'DRUM-40',
    'tread deeper than before',
    'minor',
    'specimen',
    'measure again: a point moved, or the tyre was hot',
  ),
  entry(
    'DRUM-44',
    'failures by different causes',
    'note',
    'run',
    'one law is fitted to all, and one to each cause with the others as suspensions; compare them',
  ),
  entry(
    'DRUM-45',
    'stretch of the test written twice',
    'note',
    'interval',
    'its distance counts once',
  ),
  entry(
    'DRUM-48',
    'stop criterion overridden',
    'minor',
    'run',
    'who let it run on, and why, is asked of the lab',
  ),
];
