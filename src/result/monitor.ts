import type { Input } from './analysis.ts';

/** Centre line and limits of a chart. */
export interface Limits {
  readonly centre: number;
  readonly lower: number;
  readonly upper: number;
}

/** Which pair of charts the readings are drawn on. */
export type ChartKind = 'individuals' | 'mean-range' | 'mean-spread';

/** A point of the charts: a reading, or the mean of those of an occasion. */
export interface MonitoredPoint {
  readonly line: number;
  readonly time: string;
  readonly batch: string | null;
  readonly readings: number;
  /** In the scale of the first batch. */
  readonly value: number;
  /** Moving range, range or standard deviation; null where it has none. */
  readonly spread: number | null;
  readonly inBase: boolean;
  readonly ewma: { readonly value: number; readonly lower: number; readonly upper: number };
  readonly cusum: { readonly high: number; readonly low: number };
  /** Names of what signals here: `value`, `spread`, `ewma`, `cusum`, `WE2`, …. */
  readonly signals: readonly string[];
}

/** Points in a row at which one chart or rule signals. */
export interface Signal {
  readonly by: string;
  /** In words. */
  readonly what: string;
  /** Places among the points, from 0. */
  readonly first: number;
  readonly last: number;
  readonly from: string;
  readonly to: string;
  /** Cause and decision; null while it is open. */
  readonly settled: string | null;
}

/** When a drift that was signalled most likely began. */
export interface DriftStart {
  /** Of the first open signal. */
  readonly signalled: string;
  /** The most likely first point of a step, and the first and last that may be it. */
  readonly began: string;
  readonly earliest: string;
  readonly latest: string;
  /** Time of the last point before the earliest: good until there; null where there is none. */
  readonly lastGood: string | null;
  /** Level since then, and how far it lies from the centre line. */
  readonly level: number;
  readonly shift: number;
  /** First point since the cumulative sum last stood at nought; null where it has not signalled. */
  readonly byCusum: string | null;
}

/** How a new batch of reference tyres was tied to the old one. */
export interface BatchBridge {
  readonly from: string;
  readonly to: string;
  readonly layout: 'paired' | 'separate';
  readonly occasions: number;
  /** New minus old; it is taken from every later reading of the new batch. */
  readonly difference: number;
  readonly standardError: number;
  readonly interval: { readonly level: number; readonly lower: number; readonly upper: number };
  /** What is to be kept in mind; null as a rule. */
  readonly why: string | null;
}

/** One check standard on one rig. */
export interface MonitoredStandard {
  readonly standard: string | null;
  readonly rig: string | null;
  readonly unit: string | null;
  readonly chart: ChartKind;
  readonly subgroup: number;
  readonly base: {
    readonly points: number;
    readonly from: string;
    readonly to: string;
    /** How it was chosen, in words. */
    readonly chosen: string;
  };
  readonly limits: {
    readonly value: Limits;
    readonly spread: Limits;
    /** Standard deviation of a point. */
    readonly sigma: number;
  };
  readonly ewma: { readonly weight: number; readonly width: number };
  readonly cusum: { readonly allowance: number; readonly decision: number };
  readonly rules: string;
  /** Points between false alarms of each chart alone, were the limits known. */
  readonly runLength: Readonly<Record<string, number>>;
  readonly points: readonly MonitoredPoint[];
  readonly signals: readonly Signal[];
  readonly drift: DriftStart | null;
  readonly bridges: readonly BatchBridge[];
  readonly notes: readonly string[];
  readonly standing: 'in-control' | 'out-of-control';
}

/** How a stored result stands to a drift. */
export interface TouchedResult {
  readonly path: string;
  readonly run: string | null;
  readonly rig: string | null;
  readonly from: string | null;
  readonly to: string | null;
  readonly standing: 'touched' | 'clear' | 'unknown';
  readonly why: string;
}

/** `tirelab monitor`: the check standards of a rig over time. */
export interface MonitorResult {
  readonly inputs: readonly Input[];
  readonly standards: readonly MonitoredStandard[];
  readonly touched: readonly TouchedResult[];
  readonly notes: readonly string[];
  readonly standing: 'in-control' | 'out-of-control';
}
