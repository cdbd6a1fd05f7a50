import { quote } from '../../problem/echo.ts';
import type { ColumnKind } from '../columns.ts';
import type { RecordForm } from '../records.ts';
import { sampleDialect } from '../samples/dialect.ts';
import { SampleTimes } from '../samples/times.ts';
import { ExportCells } from './cells.ts';
import { findExportColumns } from './columns.ts';
import { ImportTally } from './import-report.ts';
import type { ExportProfile } from './profile.ts';
import { ExportRows } from './rows.ts';

/**
 * How a small table of a lab is read by the profile of its rig: outcomes, inspections, events. The profile's fingerprint
 * and rows of units are those of the rig's log: a table is known by its columns, with their units in brackets, which may stand
 * behind lines of another number.
 *
 * @param kinds the columns that the table may have
 * @returns undefined without a profile: the table is in plain form
 */
export function recordForm(
  profile: ExportProfile | null,
  kinds: readonly ColumnKind<string>[],
): RecordForm | undefined {
  if (profile === null) return undefined;
  const preamble = profile.preamble === 0 ? 0 : 'until-header';
  const own: ExportProfile = { ...profile, preamble, header: ['names'], fingerprints: [] };
  const rows = new ExportRows(own, kinds);
  return {
    dialect: profile.dialect,
    table: { rows, sheet: profile.sheet },
    cells: (file, problems) => new ExportCells(file, problems, own, new ImportTally()),
    find: (header, asked, file, problems) => {
      const { known, findings } = findExportColumns(header, rows.units, own, asked, file, problems);
      return { known, findings };
    },
    instant: (text) => instant(text, profile),
  };
}

/** A single time has no rows before it that could tell the first from the second time round. */
function instant(text: string, profile: ExportProfile): number | { readonly wrong: string } {
  const times = new SampleTimes(sampleDialect(profile));
  const read = times.instant(text);
  if (read === null) return { wrong: times.problem(text).message };
  const zone = profile.time !== null && 'zone' in profile.time ? profile.time.zone : null;
  if (zone === null || !times.isOpen(text)) return read;
  return {
    wrong: `found ${quote(text)}, which the clock of ${quote(zone.name)} shows twice that night, expected one instant; write it with its offset, such as +01:00`,
  };
}
