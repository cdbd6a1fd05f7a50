import type { DeviationList } from '../../conformance/deviation-list.ts';
import type { ImpactProtocol } from '../../documents/kinds.ts';
import { quote } from '../../problem/echo.ts';
import { counted, upTo } from '../../quantity/format.ts';
import { stillLacking } from '../rules/stop.ts';
import type { SeriesPath } from './path.ts';
import { raiseAt } from './replayed.ts';
import type { RisingSeriesPath } from './rising-path.ts';

/** Share of specimens failing at their first hit from which the start is too high. Common practice, no source. */
const OFTEN_FAILED_FIRST = 0.2;

/** A series that has come to its end, and where it stands. */
export interface EndedSeries {
  /** Empty where there is only one. */
  readonly name: string;
  readonly file: string;
  readonly path: SeriesPath;
}

/**
 * Raises what only the end of a series shows: its stop (DROP-10, DROP-56), up-and-down its reversals (DROP-09), and a
 * history that its rule could not have made, which invalidates the run.
 */
export function checkEnd(ended: EndedSeries, protocol: ImpactProtocol, list: DeviationList): void {
  const { path, file } = ended;
  const progress = path.progress();
  const series = ended.name === '' ? 'the series' : `series ${quote(ended.name)}`;
  const { stop } = protocol;
  const reverses = protocol.method === 'up-and-down' || protocol.method === 'transformed-up-and-down';
  if (reverses && progress.reversals < 2) {
    list.add({ code: 'DROP-09', file, found: () => `${series} has ${fewReversals(progress)}` });
  }
  const lacking = path.lacking();
  if ((stop !== null || lacking !== null) && path.advice().decision !== 'stop') {
    list.add({
      code: 'DROP-10',
      file,
      found: () => `${series} ends with ${lacking ?? stillLacking(stop!, progress)}`,
    });
  }
  const foreign = path.moves.foreign(series, protocol.method);
  if (foreign !== null) {
    const { code, found, effect } = foreign;
    list.add({ code, severity: 'invalidating', scope: 'run', file, found: () => found, effect });
  }
  const beyond = path.beyondStop();
  if (beyond !== null) {
    raiseAt(
      list,
      beyond.first,
      'DROP-56',
      () => `${series} goes on for ${counted(beyond.count, 'drop')} after its stop`,
    );
  }
}

/** Raises DROP-07 for the run where too many specimens failed at their first hit. */
export function checkFirstHits(paths: readonly RisingSeriesPath[], file: string, list: DeviationList): void {
  const hits = paths.map((path) => path.firstHits());
  const specimens = hits.reduce((sum, hit) => sum + hit.specimens, 0);
  const failed = hits.reduce((sum, hit) => sum + hit.failed, 0);
  if (failed <= OFTEN_FAILED_FIRST * specimens) return;
  list.add({
    code: 'DROP-07',
    scope: 'run',
    file,
    found: () =>
      `${failed} of ${counted(specimens, 'rise')} (${upTo((100 * failed) / specimens, 0)} %) failed at the first hit`,
    effect: 'the start is too high for these tyres: start lower and repeat',
  });
}

/** A note on rises that were broken off: what is known of them is a lower bound. */
export function unfinishedNote(paths: readonly RisingSeriesPath[]): string[] {
  const names = paths.flatMap((path) => path.unfinished());
  if (names.length === 0) return [];
  const shown = names.slice(0, 5).map((name) => quote(name, 20));
  const more = names.length > shown.length ? ` and ${names.length - shown.length} more` : '';
  return [
    `${shown.join(', ')}${more} ended below the highest level without failing: ` +
      'known only to be stronger than the last height survived.',
  ];
}

function fewReversals({
  drops,
  failures,
  reversals,
}: {
  drops: number;
  failures: number;
  reversals: number;
}): string {
  if (reversals === 1) return `only one reversal in ${counted(drops, 'valid drop')}`;
  if (drops === 0) return 'no valid drop';
  return `${counted(drops, 'valid drop')}, all of which ${failures === 0 ? 'survived' : 'failed'}`;
}
