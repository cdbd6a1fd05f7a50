import type { ImportReport } from './export/import-report.ts';
import type { Finding } from './finding.ts';

/** What few rigs write beside a drop; null where the log is silent. */
export interface DropDetails {
  /** Blows that the rig counted: more than one is a rebound that was not caught. */
  readonly hits: number | null;
  /** What the rebound catcher did. */
  readonly catcher: 'in-time' | 'early' | 'missed' | null;
  /** `id@config` of the rig, where several or several configurations of one made a log. */
  readonly rig: string | null;
  /** °C at which the pressure was set. */
  readonly setTemperature: number | null;
  /** bar, after the hit. */
  readonly pressureAfter: number | null;
  /** Name of the pressure gauge. */
  readonly gauge: string | null;
  /** The outcome that a second reader found. */
  readonly secondReading: 'failed' | 'survived' | 'not-evaluable' | null;
  readonly reader: string | null;
  /** How tightness was looked at. */
  readonly leakCheck: string | null;
  /** The failure criterion that the outcome was read by. */
  readonly criterion: string | null;
  /** `id@version` of the protocol that the rig's computer showed. */
  readonly protocol: string | null;
}

/** One hit of the falling mass as the log tells it; null where the log is silent. */
export interface Drop {
  readonly file: string;
  /** One-based line of the log on which the row begins. */
  readonly line: number;
  /** The rig's own running number. */
  readonly number: number | null;
  /** As written; from an export whose profile says how, ISO 8601 with its offset. */
  readonly time: string | null;
  readonly series: string | null;
  readonly specimen: string;
  /** Degrees from the valve, 0 to 360. */
  readonly site: number | null;
  /** mm above first contact. */
  readonly plannedHeight: number | null;
  readonly height: number;
  /** kg. */
  readonly mass: number | null;
  /** bar, before the hit. */
  readonly pressure: number | null;
  /** °C. */
  readonly temperature: number | null;
  /** m/s at contact. */
  readonly velocity: number | null;
  /** Null where the cell is empty. */
  readonly outcome: 'failed' | 'survived' | 'not-evaluable' | null;
  readonly damage: string | null;
  /** What the log says; an empty cell means yes. */
  readonly valid: boolean;
  readonly reason: string | null;
  readonly operator: string | null;
  readonly remark: string | null;
  /** Null, or not there, where the log has none of its columns. */
  readonly details?: DropDetails | null;
}

/** A log read to its end. */
export interface DropLog {
  readonly path: string;
  readonly sha256: string;
  readonly bytes: number;
  readonly drops: readonly Drop[];
  /** Column names that tirelab does not know: a note, never an error. */
  readonly unknownColumns: readonly { readonly name: string; readonly column: number }[];
  /** Fields of a drop that the log has a column for: `pressure`, `mass`, `plannedHeight`, `number`, …. */
  readonly columns: ReadonlySet<string>;
  /** What was left out or not understood, though the log could be read. */
  readonly findings: readonly Finding[];
  /** What became of its rows and cells on their way in. */
  readonly import: ImportReport;
}

/** Of a drop of which nothing of that kind was noted. */
export const NO_DETAILS: DropDetails = {
  hits: null,
  catcher: null,
  rig: null,
  setTemperature: null,
  pressureAfter: null,
  gauge: null,
  secondReading: null,
  reader: null,
  leakCheck: null,
  criterion: null,
  protocol: null,
};
