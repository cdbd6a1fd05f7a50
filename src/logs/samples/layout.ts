import { ProblemList } from '../../problem/problem.ts';
import { type Column, type ColumnKind, findColumns, unknownColumnMessage } from '../columns.ts';
import { type ExportColumn, findExportColumns } from '../export/columns.ts';
import { headerCell } from '../export/header.ts';
import type { ExportProfile } from '../export/profile.ts';
import type { Finding } from '../finding.ts';
import type { Row } from '../row.ts';
import type { SampleDialect } from './dialect.ts';
import { kindsAt, positionedName } from './positions.ts';
import { decimalsIn, SAMPLE_QUANTITIES, type SampleQuantity } from './quantities.ts';

/** A numeric column: the scanner hands on whole numbers of 10^−decimals of its own unit. */
export interface SampleColumn {
  readonly name: string;
  readonly unit: string;
  readonly decimals: number;
  readonly role: SampleQuantity['role'];
  /** Zero-based place in the row. */
  readonly index: number;
  /** Texts that mean "no value" in this column, beside those of the whole log. */
  readonly sentinels: readonly string[];
  /** To be taken off, in the unit of the results: the air pressure where the column is absolute. */
  readonly ambient: number;
}

/** Where the columns of a drum log stand: what every part of the file must know. Plain data, fit for a thread. */
export interface SampleLayout {
  readonly dialect: SampleDialect;
  readonly columnCount: number;
  /** Column of times, or −1 where the log has `elapsed`. */
  readonly timeIndex: number;
  /** Column of the date where it stands apart from the time; −1 otherwise. */
  readonly dateIndex: number;
  /** Milliseconds since 1970 from which `elapsed` counts; 0 where nothing says so. */
  readonly start: number;
  /** −1 where the log has no such column. */
  readonly stateIndex: number;
  /** In the order of SAMPLE_QUANTITIES: speed is the first, load the second. */
  readonly columns: readonly SampleColumn[];
  /** The header line as written: where it comes again, the rig began anew. */
  readonly header: string;
  /** What else stood above the rows, and may come again with it: rows of units, and what lines before it began with. */
  readonly head: { readonly rows: readonly string[]; readonly keys: readonly string[] };
  /** One-based line of the header, and the byte after its line end. */
  readonly headerLine: number;
  readonly bodyOffset: number;
  readonly lineEnd: 10 | 13;
}

/** The columns of a drum log in plain form. */
export const SAMPLE_COLUMNS: readonly ColumnKind<string>[] = [
  { key: 'time', name: 'time', unit: null },
  { key: 'state', name: 'state', unit: null },
  ...SAMPLE_QUANTITIES.map(({ name, unit }) => ({
    key: name,
    name,
    unit: unit === '1' ? null : unit,
    isNeeded: name === 'speed' || name === 'load',
  })),
];

/** The same, and a date that stands apart from the time, as exports may have them. */
export const SAMPLE_EXPORT_COLUMNS: readonly ColumnKind<string>[] = [
  ...SAMPLE_COLUMNS,
  { key: 'date', name: 'date', unit: null },
];

/** Where the header stood, and what around it. */
export type HeaderPlace = Pick<SampleLayout, 'header' | 'head' | 'bodyOffset' | 'lineEnd' | 'start'>;

/** A rig's profile, and the row of units where the header has one. */
export interface Export {
  readonly profile: ExportProfile;
  readonly units: readonly string[] | null;
}

/**
 * The meaning of a header, and a note for each column that is not known or not there.
 *
 * @param position of the drum whose columns are read, where each has its own
 * @throws InputError with every problem of the header.
 */
export function readLayout(
  header: Row,
  file: string,
  place: HeaderPlace,
  dialect: SampleDialect,
  from: Export | null,
  position: string | null,
): { readonly layout: SampleLayout; readonly findings: readonly Finding[] } {
  const problems = new ProblemList();
  const { known, findings } = columnsOf(header, file, from, position, problems);
  if (!known.has('time') && !known.has('elapsed')) {
    const key = from === null ? '' : '; the profile names it (export.columns.time)';
    const message = `found no column of times, expected "time" (ISO 8601 with offset) or "elapsed [s]"${key}`;
    problems.add({ file, line: header.line, column: null, code: 'missing-column', message });
  }
  problems.throwIfAny();
  if (dialect.time?.kind === 'seconds' && known.has('time'))
    known.set('elapsed', { ...known.get('time')!, unit: 's' });
  const hasClock = known.has('time') && dialect.time?.kind !== 'seconds';
  if (hasClock) known.delete('elapsed');
  const columns = SAMPLE_QUANTITIES.flatMap((quantity): SampleColumn[] => {
    const column = known.get(quantity.name);
    if (!column) return [];
    const unit = column.unit ?? quantity.unit;
    const { name, role } = quantity;
    const { sentinels = [], ambient = null } = column.rule ?? {};
    const decimals = decimalsIn(unit, quantity);
    return [{ name, unit, decimals, role, index: column.index, sentinels, ambient: ambient ?? 0 }];
  });
  const layout = {
    ...place,
    dialect,
    columnCount: header.cells.length,
    timeIndex: hasClock ? known.get('time')!.index : -1,
    dateIndex: hasClock ? (known.get('date')?.index ?? -1) : -1,
    stateIndex: known.get('state')?.index ?? -1,
    columns,
    headerLine: header.line,
  };
  return { layout, findings: from === null ? findings : [...findings, ...conversions(columns, header)] };
}

type Known = Column & Partial<Pick<ExportColumn, 'rule'>>;

function columnsOf(
  header: Row,
  file: string,
  from: Export | null,
  position: string | null,
  problems: ProblemList,
): { readonly known: Map<string, Known>; readonly findings: readonly Finding[] } {
  const { cells } = header;
  if (from !== null) {
    const kinds = kindsAt(SAMPLE_EXPORT_COLUMNS, position, cells, from.profile);
    const found = findExportColumns(header, from.units, from.profile, kinds, file, problems);
    const isElsewhere = ({ code, column }: Finding) =>
      position !== null && code === 'unknown-column' && column !== null && isOfOther(header, column);
    return { known: found.known, findings: found.findings.filter((finding) => !isElsewhere(finding)) };
  }
  const { known, unknown } = findColumns(
    header,
    kindsAt(SAMPLE_COLUMNS, position, cells, null),
    file,
    problems,
  );
  const strange = unknown.filter(({ name }) => position === null || positionedName(name) === null);
  const findings = strange.map((column) => ({
    code: 'unknown-column',
    message: unknownColumnMessage(column, SAMPLE_COLUMNS),
    ...header.place(column.index),
  }));
  return { known, findings };
}

/** Whether the column that begins at this place of the header is one of another position. */
function isOfOther(header: Row, column: number): boolean {
  const index = header.cells.findIndex((_, i) => header.place(i).column === column);
  return positionedName(headerCell(header.cells[index]!).name) !== null;
}

/** What a rig writes in other units than the results are said in. */
function conversions(columns: readonly SampleColumn[], header: Row): readonly Finding[] {
  return columns.flatMap(({ name, unit, ambient, index }) => {
    const own = SAMPLE_QUANTITIES.find((quantity) => quantity.name === name)!.unit;
    const isOther = own !== '1' && unit !== own;
    if (!isOther && ambient === 0) return [];
    const off = ambient === 0 ? '' : `, less ${ambient} ${own} of air pressure`;
    return [
      { code: 'converted', message: `${name} read from ${unit} into ${own}${off}`, ...header.place(index) },
    ];
  });
}
