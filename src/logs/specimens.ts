import { echo, quote } from '../problem/echo.ts';
import type { ProblemList } from '../problem/problem.ts';
import { type Dimension, dimensionOf } from '../quantity/units.ts';
import type { LogSource } from './bytes.ts';
import { CellReader, type Range } from './cells.ts';
import { type Column, type ColumnKind, findColumns } from './columns.ts';
import { PLAIN } from './dialect.ts';
import type { TableSink } from './intake.ts';
import { type Register, ROLES, type Specimen } from './register.ts';
import { type Replacement, replacementOf } from './replacements.ts';
import type { Row } from './row.ts';
import { readTable } from './table.ts';

type Key =
  | 'specimen'
  | 'construction'
  | 'role'
  | 'mass'
  | 'width'
  | 'thickness'
  | 'diameter'
  | 'pressure'
  | 'replaces'
  | 'reason'
  | 'approver';

/** The columns of the specimens table that mean something to tirelab; any other is kept as text. */
export const SPECIMEN_COLUMNS: readonly ColumnKind<Key>[] = [
  { key: 'specimen', name: 'specimen', unit: null, isNeeded: true },
  { key: 'construction', name: 'construction', unit: null },
  { key: 'role', name: 'role', unit: null },
  { key: 'mass', name: 'mass', unit: 'g' },
  { key: 'width', name: 'width', unit: 'mm' },
  { key: 'thickness', name: 'thickness', unit: 'mm' },
  { key: 'diameter', name: 'diameter', unit: 'mm' },
  { key: 'pressure', name: 'pressure', unit: 'bar' },
  { key: 'replaces', name: 'replaces', unit: null },
  { key: 'reason', name: 'reason', unit: null },
  { key: 'approver', name: 'approver', unit: null },
];

/** Columns with a field of their own; every other cell goes to `other`. */
const FIELDS: ReadonlySet<Key> = new Set(['specimen', 'construction', 'role', 'mass']);

const WORDS_OF_ROLE: ReadonlyMap<string, string> = new Map(ROLES.map((role) => [role, role]));
const ROLE_SETTLED = {
  code: 'unknown-role',
  message: 'an empty cell means candidate: a tyre that is meant as another must not slip into the estimate',
};

/** What a measured column can hold, by its dimension. Common practice, no source: only to catch slips. */
const RANGES: { readonly [D in Dimension]?: Range } = {
  mass: { unit: 'g', least: 0, most: 100_000, isOpen: true },
  length: { unit: 'mm', least: 0, most: 100_000 },
  pressure: { unit: 'bar', least: 0, most: 100 },
  temperature: { unit: '°C', least: -273.15, most: 1000 },
  force: { unit: 'N', least: 0, most: 1e6 },
  angle: { unit: 'deg', least: -3600, most: 3600 },
  energy: { unit: 'J', least: 0, most: 1e6 },
  volume: { unit: 'ml', least: 0, most: 1e6 },
  torque: { unit: 'Nm', least: 0, most: 1e6 },
  time: { unit: 'h', least: 0, most: 1e6 },
};

/**
 * Reads a run's specimens table, in plain form.
 *
 * @throws InputError with every problem of the file; a specimen that is listed twice is one, naming both lines
 */
export async function readSpecimens(source: LogSource): Promise<Register> {
  let sink: SpecimenSink | undefined;
  const table = await readTable(source, PLAIN, (path, problems) => {
    sink = new SpecimenSink(path, problems);
    return sink;
  });
  return { ...table, specimens: [...sink!.specimens.values()] };
}

class SpecimenSink implements TableSink {
  readonly specimens = new Map<string, Specimen>();
  readonly #file: string;
  readonly #problems: ProblemList;
  readonly #cells: CellReader;
  #columns: ReadonlyMap<Key, Column> = new Map();
  #measured: readonly { readonly column: Column; readonly range: Range }[] = [];
  #other: readonly Column[] = [];

  constructor(file: string, problems: ProblemList) {
    this.#file = file;
    this.#problems = problems;
    this.#cells = new CellReader(file, problems, PLAIN);
  }

  header(row: Row): void {
    const { known, unknown } = findColumns(row, SPECIMEN_COLUMNS, this.#file, this.#problems);
    const withFields = new Set([...FIELDS].map((key) => known.get(key)));
    const all = [...known.values(), ...unknown].toSorted((a, b) => a.index - b.index);
    this.#columns = known;
    this.#other = all.filter((column) => column.name !== '' && !withFields.has(column));
    this.#measured = all.flatMap((column) => {
      const dimension = column.unit === null ? null : dimensionOf(column.unit);
      const range = dimension === null ? undefined : RANGES[dimension];
      return range && column.name !== '' ? [{ column, range }] : [];
    });
  }

  row(row: Row): void {
    const at = (key: Key) => this.#columns.get(key);
    const name = this.#cells.text(row, at('specimen'));
    if (name === null) {
      const message = "specimen: found an empty cell, expected the specimen's name";
      this.#cells.problem(row, at('specimen')!, 'empty-cell', message);
      return;
    }
    const measured = Object.fromEntries(
      this.#measured.flatMap(({ column, range }) => {
        const value = this.#cells.quantity(row, column, range);
        return value === null ? [] : [[column.name, value]];
      }),
    );
    const replaces = this.#replacement(row, name);
    const specimen: Specimen = {
      file: this.#file,
      line: row.line,
      specimen: name,
      construction: this.#cells.text(row, at('construction')),
      ...placeOf(row, at('construction')),
      role: this.#cells.word(row, at('role'), WORDS_OF_ROLE, ROLE_SETTLED),
      mass: at('mass') ? (measured.mass ?? null) : null,
      ...(replaces === null ? {} : { replaces }),
      other: Object.fromEntries(
        this.#other.flatMap((column) => {
          const text = this.#cells.verbatim(row, column);
          return text === null ? [] : [[column.title, text]];
        }),
      ),
      measured,
    };
    const twin = this.specimens.get(name);
    if (twin) this.#refuseTwin(row, specimen, twin);
    else this.specimens.set(name, specimen);
  }

  end(): void {
    this.#checkReplacements();
    this.#cells.reportWords();
  }

  #replacement(row: Row, specimen: string): Replacement | null {
    const cell = (key: Key) => this.#cells.text(row, this.#columns.get(key));
    const found = replacementOf(specimen, cell('replaces'), cell('reason'), cell('approver'));
    if (found === null || !('wrong' in found)) return found;
    this.#cells.problem(row, this.#columns.get('replaces')!, 'retest-without-ground', found.wrong);
    return null;
  }

  /** A specimen is replaced by one other, which the table has too. */
  #checkReplacements(): void {
    const replaced = new Map<string, Specimen>();
    for (const row of this.specimens.values()) {
      if (row.replaces == null) continue;
      const { specimen } = row.replaces;
      const twin = replaced.get(specimen);
      replaced.set(specimen, row);
      const message = this.#isReplacedBy(row, specimen)
        ? `found ${quote(row.specimen)} and ${quote(specimen)} in place of one another, expected one of them to stand; correct the wrong row`
        : !this.specimens.has(specimen)
          ? `found ${quote(row.specimen)} in place of ${quote(specimen)}, which the table does not list, expected both to be kept; add its row`
          : twin !== undefined
            ? `found ${quote(row.specimen)} in place of ${quote(specimen)}, which ${quote(twin.specimen)} replaces on line ${twin.line}, expected one; a second retest replaces the first`
            : null;
      if (message === null) continue;
      const { file, line } = row;
      this.#problems.add({ file, line, column: null, code: 'retest-of-whom', message });
    }
  }

  /** Whether a specimen, or one that it replaces, replaces the row itself. */
  #isReplacedBy(row: Specimen, specimen: string): boolean {
    const met = new Set<string>();
    for (let at: string | undefined = specimen; at !== undefined && !met.has(at); ) {
      if (at === row.specimen) return true;
      met.add(at);
      at = this.specimens.get(at)?.replaces?.specimen;
    }
    return false;
  }

  #refuseTwin(row: Row, specimen: Specimen, twin: Specimen): void {
    const [here, there] = [specimen.construction, twin.construction];
    const isMoved = here !== there && here !== null && there !== null;
    const message = isMoved
      ? `found specimen ${quote(specimen.specimen)} under construction "${echo(here)}", and on line ${twin.line} under "${echo(there)}"; expected one specimen to be of one construction: correct the wrong row`
      : `found specimen ${quote(specimen.specimen)} again (line ${twin.line} lists it too), expected each once; delete or rename one`;
    const code = isMoved ? 'specimen-under-two-constructions' : 'duplicate-specimen';
    this.#cells.problem(row, this.#columns.get('specimen')!, code, message);
  }
}

function placeOf(row: Row, column: Column | undefined): Pick<Specimen, 'constructionColumn'> {
  return column === undefined ? {} : { constructionColumn: row.place(column.index).column };
}
