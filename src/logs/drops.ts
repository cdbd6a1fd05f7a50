import type { LogSource } from './bytes.ts';
import { CellReader } from './cells.ts';
import { PLAIN } from './dialect.ts';
import type { DropLog } from './drop.ts';
import { DropSink } from './drop-sink.ts';
import { EXPORT_COLUMNS, ExportSink } from './export/export-sink.ts';
import type { ExportProfile } from './export/profile.ts';
import { ExportRows } from './export/rows.ts';
import { readTable } from './table.ts';

/**
 * Reads a drop log, in plain form or as the profile of its rig says. The same drops come out either way.
 *
 * @param source a path, or the stream of standard input
 * @throws InputError with every problem of the file at its line and column
 */
export async function readDropLog(source: LogSource, profile: ExportProfile | null = null): Promise<DropLog> {
  return profile === null ? readPlain(source) : readExport(source, profile);
}

async function readPlain(source: LogSource): Promise<DropLog> {
  let sink: DropSink | undefined;
  const table = await readTable(source, PLAIN, (path, problems) => {
    sink = new DropSink(path, problems, new CellReader(path, problems, PLAIN));
    return sink;
  });
  const { sheet: _, ...read } = table;
  return { ...read, ...sink!.read(), findings: [...sink!.findings, ...table.findings] };
}

async function readExport(source: LogSource, profile: ExportProfile): Promise<DropLog> {
  const rows = new ExportRows(profile, EXPORT_COLUMNS);
  let sink: ExportSink | undefined;
  const table = await readTable(
    source,
    profile.dialect,
    (path, problems) => {
      sink = new ExportSink(path, problems, profile, rows);
      return sink;
    },
    { rows, sheet: profile.sheet },
  );
  const { sheet, ...read } = table;
  const drops = sink!.read();
  return {
    ...read,
    ...drops,
    import: { ...drops.import, sheet },
    findings: [...rows.findings, ...sink!.findings, ...table.findings],
  };
}
