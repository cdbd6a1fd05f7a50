import type { Construction } from '../../documents/kinds.ts';
import type { Specimen } from '../../logs/register.ts';

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
  /** Valid hits in the series that had it first. */
  trials: number;
  trialSeries: number;
  /** The code that takes all its further drops out of the estimate; null as a rule. */
  condemnedBy: string | null;
  /** What only logs with sites, pressures or times need; made when it is first written to. */
  past: Past | null;
}

/** A place on a specimen that was hit. */
export interface UsedSite {
  readonly angle: number;
  readonly line: number;
  /** Whether a valid drop used it, or only one that the log left out. */
  counts: boolean;
}

/** The rest of what is remembered of a specimen. */
export interface Past {
  /** Line of the failure of a spot, by its number, where only the failed spot is retired. */
  failedSites: Map<number, number> | null;
  /** Angles of its spots in the order of first use: of all hits, and of those that were counted. */
  angles: number[];
  countedAngles: number[];
  /** Places that were hit. */
  sites: UsedSite[];
  /** Valid hits in further series. */
  otherTrials: Map<number, number> | null;
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
    trials: 0,
    trialSeries: -1,
    condemnedBy: null,
    past: null,
  };
}

/** A tyre's past, to be written to. */
export function pastOf(tyre: Tyre): Past {
  tyre.past ??= {
    failedSites: null,
    angles: [],
    countedAngles: [],
    sites: [],
    otherTrials: null,
    lastTime: null,
    pressure: null,
    fallFrom: 0,
    falls: 0,
  };
  return tyre.past;
}

/** Counts one more valid hit of a tyre in a series, and says which it is, from 1. */
export function nextTrial(tyre: Tyre, series: number): number {
  if (tyre.trialSeries < 0) tyre.trialSeries = series;
  if (tyre.trialSeries === series) {
    tyre.trials += 1;
    return tyre.trials;
  }
  const past = pastOf(tyre);
  past.otherTrials ??= new Map();
  const trial = (past.otherTrials.get(series) ?? 0) + 1;
  past.otherTrials.set(series, trial);
  return trial;
}
