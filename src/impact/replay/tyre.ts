import type { Construction } from '../../documents/kinds.ts';
import type { Specimen } from '../../logs/register.ts';
import type { UsedSite } from './sites.ts';

/**
 * All that a replay remembers of one specimen, in one record: a log of 100,000 tyres would else keep as many entries
 * in each of a dozen maps.
 */
export interface Tyre {
  readonly name: string;
  /** From 0, in the order of first drops. */
  readonly index: number;
  /** Its row in the table of specimens. */
  readonly row: Specimen | null;
  readonly construction: Construction | null;
  /** Why it does not belong here (DROP-52); null where it does. */
  readonly stranger: string | null;
  /** Hits, or spots, that were counted against `sites.perSpecimen`. */
  counted: number;
  /** Line on which it failed first; null while it holds. */
  failedLine: number | null;
  /** The same by the number of the spot, where only the failed spot is retired. */
  failedSites: Map<number, number> | null;
  /** Angles of its spots in the order of first use: of all hits, and of those that were counted. */
  angles: number[] | null;
  countedAngles: number[] | null;
  /** Places that were hit. */
  sites: UsedSite[] | null;
  /** Valid hits in the series that had it first, and in any others. */
  trials: number;
  trialSeries: number;
  otherTrials: Map<number, number> | null;
  /** The code that takes all its further drops out of the estimate; null as a rule. */
  condemnedBy: string | null;
  /** Instant of its last hit, in ms; null where none is known. */
  lastTime: number | null;
  /** Its pressure at the last hit, at the beginning of the present fall, and how many hits that fall has. */
  pressure: number | null;
  fallFrom: number;
  falls: number;
}

export function newTyre(
  name: string,
  index: number,
  known: Pick<Tyre, 'row' | 'construction' | 'stranger'>,
): Tyre {
  return {
    name,
    index,
    row: known.row,
    construction: known.construction,
    stranger: known.stranger,
    counted: 0,
    failedLine: null,
    failedSites: null,
    angles: null,
    countedAngles: null,
    sites: null,
    trials: 0,
    trialSeries: -1,
    otherTrials: null,
    condemnedBy: null,
    lastTime: null,
    pressure: null,
    fallFrom: 0,
    falls: 0,
  };
}

/** Counts one more valid hit of a tyre in a series, and says which it is, from 1. */
export function nextTrial(tyre: Tyre, series: number): number {
  if (tyre.trialSeries < 0) tyre.trialSeries = series;
  if (tyre.trialSeries === series) {
    tyre.trials += 1;
    return tyre.trials;
  }
  tyre.otherTrials ??= new Map();
  const trial = (tyre.otherTrials.get(series) ?? 0) + 1;
  tyre.otherTrials.set(series, trial);
  return trial;
}
