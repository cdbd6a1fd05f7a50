import { type Dialect, PLAIN } from '../dialect.ts';
import type { Drop } from '../drop.ts';
import type { TimeRule } from '../time/time-rule.ts';

/** One column of an export, and what its header does not say. */
export interface ColumnRule {
  /** Header of the column as the rig writes it, with or without the unit in brackets. */
  readonly name: string;
  /** Unit where the header has none; where it has one, the two must agree. */
  readonly unit: string | null;
  /** Air pressure (bar) to take off, where the column is absolute; 0 says that it is gauge whatever its name. */
  readonly ambient: number | null;
  /** Texts that mean "no value" in this column, beside those of the whole export. */
  readonly sentinels: readonly string[];
  /** What an id looks like: `#` a digit, `@` a letter, anything else itself. */
  readonly pattern: string | null;
}

/** What a row directly below or at the header holds. */
export type HeaderRow = 'names' | 'units' | 'processing';

/** How one rig writes its export: the `export` block of its document. */
export interface ExportProfile {
  /** Name of the rig, for messages and reports. */
  readonly rig: string;
  readonly dialect: Dialect;
  /** False where neither the profile nor the plain form says what `1.250` is. */
  readonly isDecimalStated: boolean;
  /** Lines before the header: a count, or all until the line that has the columns. */
  readonly preamble: number | 'until-header';
  readonly header: readonly HeaderRow[];
  /** First cells of rows that sum up and are no drops. */
  readonly footer: readonly string[];
  /** By the name that the column has in the plain form, or `date` for a date apart from the time. */
  readonly columns: ReadonlyMap<string, ColumnRule>;
  /** Headers of columns that are known and not read. */
  readonly ignore: readonly string[];
  /** Null where the rig writes the words of the plain form. */
  readonly outcomes: ReadonlyMap<string, NonNullable<Drop['outcome']>> | null;
  readonly valid: ReadonlyMap<string, boolean> | null;
  readonly catcher: ReadonlyMap<string, 'in-time' | 'early' | 'missed'> | null;
  /** Codes of damages by the lab's words; null where the lab writes the codes. */
  readonly damages: ReadonlyMap<string, string> | null;
  readonly time: TimeRule | null;
  /** Whether times are rebuilt from the seconds that the rig counts (column `uptime`), where its clock jumps. */
  readonly isRebuilt: boolean;
  /** Whether the rig writes its header again, or another one, where it starts anew. */
  readonly restarts: boolean;
  /** Whether the running number goes on over a restart. */
  readonly counter: 'continues' | 'restarts';
  /** Fingerprints of the headers that are this rig's; any header where none is given. */
  readonly fingerprints: readonly string[];
  /** Sheet of a workbook; null where the workbook has one only, or the export is text. */
  readonly sheet: string | null;
}

/** A profile that says nothing beyond the plain form: what a document leaves out is taken from here. */
export const PLAIN_PROFILE: ExportProfile = {
  rig: 'plain',
  dialect: PLAIN,
  isDecimalStated: true,
  preamble: 0,
  header: ['names'],
  footer: [],
  columns: new Map(),
  ignore: [],
  outcomes: null,
  valid: null,
  catcher: null,
  damages: null,
  time: null,
  isRebuilt: false,
  restarts: false,
  counter: 'continues',
  fingerprints: [],
  sheet: null,
};
