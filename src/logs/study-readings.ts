import type { LogSource } from './bytes.ts';
import type { Column, ColumnKind } from './columns.ts';
import { type RecordRow, type RecordTable, readRecords } from './records.ts';

/** One reading of a gauge study: a part by an operator. */
export interface GaugeReading {
  readonly line: number;
  readonly part: string;
  readonly operator: string;
  readonly value: number;
}

/** One result of a laboratory at a level (a material, a height). */
export interface LaboratoryReading {
  readonly line: number;
  readonly level: string | null;
  readonly laboratory: string;
  readonly value: number;
}

/** What two readers found on one specimen. */
export interface PairedReading {
  readonly line: number;
  readonly first: string;
  readonly second: string;
}

/** The readings of a study, of the kind that its header tells. */
export type StudyReadings = { readonly file: string; readonly table: Omit<RecordTable<never>, 'records'> } & (
  | { readonly kind: 'gauge'; readonly unit: string | null; readonly readings: readonly GaugeReading[] }
  | {
      readonly kind: 'laboratories';
      readonly unit: string | null;
      readonly readings: readonly LaboratoryReading[];
    }
  | { readonly kind: 'readers'; readonly readings: readonly PairedReading[] }
);

type Kind = StudyReadings['kind'];
type Key = 'who' | 'what' | 'value' | 'second';

const VALUE = { least: -1e12, most: 1e12 };

/**
 * Reads a study: part, operator, value of a gauge study; laboratory, (level,) value of an interlaboratory one; the readings of
 * two readers, as `first reading` and `second reading` or as a drop log has them, `outcome` and `second reading`.
 *
 * @throws InputError with every problem of the file
 */
export async function readStudy(source: LogSource): Promise<StudyReadings> {
  const seen: { kind: Kind; unit: string | null } = { kind: 'gauge', unit: null };
  const { records, ...table } = await readRecords(
    source,
    (header) => {
      seen.kind = kindOf(header);
      return COLUMNS[seen.kind](header);
    },
    (row) => {
      const { kind } = seen;
      if (kind === 'readers') return pairOf(row);
      seen.unit = row.unitOf('value');
      return readingOf(row, kind, seen.unit);
    },
  );
  const found = records.filter((record) => record !== null);
  const base = { file: table.path, table };
  const { kind, unit } = seen;
  if (kind === 'readers') return { ...base, kind, readings: found as PairedReading[] };
  if (kind === 'gauge') return { ...base, kind, unit, readings: found as GaugeReading[] };
  return { ...base, kind, unit, readings: found as LaboratoryReading[] };
}

function kindOf(header: readonly Column[]): Kind {
  const names = new Set(header.map(({ name }) => name));
  if (names.has('laboratory')) return 'laboratories';
  return names.has('second reading') ? 'readers' : 'gauge';
}

const needed = { isNeeded: true, unit: null } as const;
const COLUMNS: Readonly<Record<Kind, (header: readonly Column[]) => ColumnKind<Key>[]>> = {
  gauge: (header) => [
    { key: 'what', name: named(header, 'part', 'specimen'), ...needed },
    { key: 'who', name: 'operator', ...needed },
    valueColumn(header),
  ],
  laboratories: (header) => [
    { key: 'who', name: 'laboratory', ...needed },
    { key: 'what', name: named(header, 'level', 'material'), unit: null },
    valueColumn(header),
  ],
  readers: (header) => [
    { key: 'what', name: named(header, 'first reading', 'outcome'), ...needed },
    { key: 'second', name: 'second reading', ...needed },
  ],
};

function named(header: readonly Column[], ...choices: readonly string[]): string {
  return choices.find((choice) => header.some(({ name }) => name === choice)) ?? choices[0]!;
}

/** `value`, or the only column with a unit. */
function valueColumn(header: readonly Column[]): ColumnKind<Key> {
  const measured = header.filter(({ unit }) => unit !== null);
  const name =
    measured.length === 1 && !header.some((one) => one.name === 'value') ? measured[0]!.name : 'value';
  return { key: 'value', name, unit: null, hasAnyUnit: true, isNeeded: true };
}

function pairOf(row: RecordRow<Key>): PairedReading | null {
  const [first, second] = [row.text('what'), row.text('second')];
  // What only one of them looked at says nothing of agreement.
  return first === null || second === null ? null : { line: row.line, first, second };
}

function readingOf(
  row: RecordRow<Key>,
  kind: 'gauge' | 'laboratories',
  unit: string | null,
): GaugeReading | LaboratoryReading {
  const value = row.quantity('value', { ...VALUE, unit: unit ?? '1' });
  if (value === null) row.needed('value', 'a number');
  if (kind === 'gauge') {
    const part = row.needed('what', 'the name of the part');
    return {
      line: row.line,
      part,
      operator: row.needed('who', 'the operator, by a code'),
      value: value ?? 0,
    };
  }
  const laboratory = row.needed('who', 'the laboratory, by a code');
  return { line: row.line, level: row.text('what'), laboratory, value: value ?? 0 };
}
