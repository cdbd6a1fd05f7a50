import { ProblemList } from '../../problem/problem.ts';
import { type ColumnKind, findColumns, unknownColumnMessage } from '../columns.ts';
import type { Finding } from '../finding.ts';
import type { Row } from '../row.ts';
import type { SampleDialect } from './dialect.ts';
import { decimalsIn, SAMPLE_QUANTITIES, type SampleQuantity } from './quantities.ts';

/** A numeric column: the scanner hands on whole numbers of 10^−decimals of its own unit. */
export interface SampleColumn {
  readonly name: string;
  readonly unit: string;
  readonly decimals: number;
  readonly role: SampleQuantity['role'];
  /** Zero-based place in the row. */
  readonly index: number;
}

/** Where the columns of a drum log stand: what every part of the file must know. Plain data, fit for a thread. */
export interface SampleLayout {
  readonly dialect: SampleDialect;
  readonly columnCount: number;
  /** Column of ISO times, or −1 where the log has `elapsed`. */
  readonly timeIndex: number;
  /** −1 where the log has no such column. */
  readonly stateIndex: number;
  /** In the order of SAMPLE_QUANTITIES: speed is the first, load the second. */
  readonly columns: readonly SampleColumn[];
  /** The header line as written: where it comes again, the rig began anew. */
  readonly header: string;
  /** One-based line of the header, and the byte after its line end. */
  readonly headerLine: number;
  readonly bodyOffset: number;
  readonly lineEnd: 10 | 13;
}

const KINDS: readonly ColumnKind<string>[] = [
  { key: 'time', name: 'time', unit: null },
  { key: 'state', name: 'state', unit: null },
  ...SAMPLE_QUANTITIES.map(({ name, unit }) => ({
    key: name,
    name,
    unit: unit === '1' ? null : unit,
    isNeeded: name === 'speed' || name === 'load',
  })),
];

/**
 * The meaning of a header, and a note for each column that is not known.
 *
 * @throws InputError with every problem of the header.
 */
export function readLayout(
  header: Row,
  file: string,
  place: Pick<SampleLayout, 'header' | 'bodyOffset' | 'lineEnd'>,
  dialect: SampleDialect,
): { readonly layout: SampleLayout; readonly findings: readonly Finding[] } {
  const problems = new ProblemList();
  const { known, unknown } = findColumns(header, KINDS, file, problems);
  if (!known.has('time') && !known.has('elapsed')) {
    const message = 'found no column of times, expected "time" (ISO 8601 with offset) or "elapsed [s]"';
    problems.add({ file, line: header.line, column: null, code: 'missing-column', message });
  }
  problems.throwIfAny();
  if (known.has('time')) known.delete('elapsed');
  const columns = SAMPLE_QUANTITIES.flatMap((quantity): SampleColumn[] => {
    const column = known.get(quantity.name);
    if (!column) return [];
    const unit = column.unit ?? quantity.unit;
    const { name, role } = quantity;
    return [{ name, unit, decimals: decimalsIn(unit, quantity), role, index: column.index }];
  });
  const layout = {
    ...place,
    dialect,
    columnCount: header.cells.length,
    timeIndex: known.get('time')?.index ?? -1,
    stateIndex: known.get('state')?.index ?? -1,
    columns,
    headerLine: header.line,
  };
  const findings = unknown.map((column) => ({
    code: 'unknown-column',
    message: unknownColumnMessage(column, KINDS),
    ...header.place(column.index),
  }));
  return { layout, findings };
}
