import { quote } from '../problem/echo.ts';
import type { LogSource } from './bytes.ts';
import type { Range } from './cells.ts';
import type { ColumnKind } from './columns.ts';
import type { ExportProfile } from './export/profile.ts';
import { recordForm } from './export/record-form.ts';
import { type RecordRow, type RecordTable, readRecords } from './records.ts';

/** How one tyre of a drum test ended, as the lab wrote it down. */
export interface DrumOutcome {
  readonly file: string;
  readonly line: number;
  readonly specimen: string;
  /** km at which it was last seen whole; null where it failed before the first look. */
  readonly survived: number | null;
  /** km at which it was seen failed; null where it was taken off unfailed. */
  readonly failed: number | null;
  /** What failed, or why it was taken off; null where nobody noted it. */
  readonly cause: string | null;
}

type Key = 'specimen' | 'survived' | 'failed' | 'cause';

/** The columns of a table of drum outcomes. */
export const OUTCOME_COLUMNS: readonly ColumnKind<Key>[] = [
  { key: 'specimen', name: 'specimen', unit: null, isNeeded: true },
  { key: 'survived', name: 'survived', unit: 'km', isNeeded: true },
  { key: 'failed', name: 'failed', unit: 'km', isNeeded: true },
  { key: 'cause', name: 'cause', unit: null },
];

/** A million km is further than any tyre runs: only to catch slips (common practice, no source). */
const SURVIVED: Range = { unit: 'km', least: 0, most: 1e6 };
const FAILED: Range = { unit: 'km', least: 0, most: 1e6, isOpen: true };

/**
 * Reads a table of drum outcomes, one row a tyre.
 *
 * @param profile how the lab writes the table; null for the plain form
 * @throws InputError with every problem of the file: a tyre that stands twice, one that failed before it survived, one
 *   without a distance
 */
export function readOutcomes(
  source: LogSource,
  profile: ExportProfile | null = null,
): Promise<RecordTable<DrumOutcome>> {
  const seen = new Map<string, number>();
  const take = (row: RecordRow<Key>): DrumOutcome => {
    const specimen = row.needed('specimen', "the specimen's name");
    checkOnce(row, specimen, seen);
    const survived = row.quantity('survived', SURVIVED);
    const failed = row.quantity('failed', FAILED);
    if (survived !== null && failed !== null && failed < survived) {
      const message = `failed: found ${failed} km, before the ${survived} km that ${quote(specimen)} survived, expected the failure at or after it; look which of the two is a slip`;
      row.problem('failed', 'failed-before-survived', message);
    }
    if (row.text('survived') === null && row.text('failed') === null) {
      const message = `found neither "survived" nor "failed" for ${quote(specimen)}, expected at least one distance; fill in how far it ran`;
      row.problem('survived', 'no-distance', message);
    }
    return { file: row.file, line: row.line, specimen, survived, failed, cause: row.text('cause') };
  };
  return readRecords(source, OUTCOME_COLUMNS, take, recordForm(profile, OUTCOME_COLUMNS));
}

function checkOnce(row: RecordRow<Key>, specimen: string, seen: Map<string, number>): void {
  if (specimen === '') return;
  const before = seen.get(specimen);
  if (before === undefined) {
    seen.set(specimen, row.line);
    return;
  }
  const message = `specimen: found ${quote(specimen)} again (it stands in line ${before} too), expected one row a tyre; keep one of the two, or correct the name`;
  row.problem('specimen', 'duplicate-specimen', message);
}
