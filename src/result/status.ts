import type { Problem } from '../problem/problem.ts';
import type { EnduranceEstimate, LedgerEntry } from './endurance.ts';

/** When something is reached: times in ISO 8601, null where nobody can say. */
export interface Forecast {
  readonly what: string;
  /** km on the counter at which it is reached. */
  readonly at: number;
  /** Without a stop, at the set speeds. */
  readonly earliest: string | null;
  /** At the kilometres a calendar hour that the test has kept so far. */
  readonly atPace: string | null;
  /** Reached already, or to be reached by the end of the day that is asked about. */
  readonly standing: 'reached' | 'due' | 'later' | 'unknown';
}

/** How a running drum test stands. */
export interface RunStatus {
  readonly run: string | null;
  readonly protocol: { readonly id: string; readonly version: string };
  readonly distance: LedgerEntry;
  /** km of the whole schedule; null where it goes by time. */
  readonly planned: number | null;
  readonly block: string | null;
  readonly firstTime: string | null;
  readonly lastTime: string | null;
  /** km a calendar hour, stops and all. */
  readonly pace: number | null;
  readonly interruptions: number;
  /** Whether the protocol lets the test go on after another stop; null where it says nothing of pauses. */
  readonly restart: { readonly allowed: boolean; readonly why: string } | null;
  readonly deviations: readonly {
    readonly code: string;
    readonly severity: string;
    readonly count: number;
  }[];
  /** Events noted since the tyres were last looked at; null where nobody can tell. */
  readonly eventsSinceLook: number | null;
  /** Trips and the like: the last events that the lab noted. */
  readonly lastEvents: readonly {
    readonly time: string;
    readonly specimen: string | null;
    readonly event: string;
    readonly value: string | null;
  }[];
  readonly lastInspection: { readonly distance: number; readonly ago: number | null } | null;
  readonly forecasts: readonly Forecast[];
  /** Distances to the limit of wear. */
  readonly wear: readonly EnduranceEstimate[];
}

/** `tirelab status`: running drum tests, as of a day. */
export interface StatusResult {
  readonly asOf: string;
  readonly runs: readonly RunStatus[];
  /** Runs that cannot be read: what is wrong with each. */
  readonly unread: readonly { readonly path: string; readonly problems: readonly Problem[] }[];
}
