import { InputError, ProblemList } from '../problem/problem.ts';
import { ByteReader, type LogSource } from './bytes.ts';
import { decoderOf } from './code-page.ts';
import type { Dialect } from './dialect.ts';
import { encodingFault, type Fault } from './fault.ts';
import type { Finding } from './finding.ts';
import { Intake, type RowForm, type TableSink } from './intake.ts';
import type { Row } from './row.ts';
import { RowScanner } from './scan.ts';
import { foreignSignature, isArchive } from './signature.ts';

/** A table read to its end. */
export interface ReadTable {
  /** As the user gave it; `-` for standard input. */
  readonly path: string;
  readonly sha256: string;
  readonly bytes: number;
  readonly findings: readonly Finding[];
  /** Where it was read from a workbook. */
  readonly sheet: string | null;
}

/** What stands around the rows of a rig's export: they are passed on without it. */
export interface TableForm {
  readonly rows: RowForm & {
    pass(items: Iterable<Row | Fault>): Iterable<Row | Fault>;
    end(): Iterable<Fault>;
  };
  /** Sheet of a workbook; null where it is the only one. */
  readonly sheet: string | null;
}

/**
 * Reads one table from its first byte to its last: a header row, then rows of as many cells. Blank lines are
 * passed over; rows whose cells are all empty, a last line cut short and NUL bytes after it are left out and found.
 *
 * @param open makes what takes the rows, given the path to name and the list for problems
 * @param form of a rig's export; null for the plain form. Only with one is a workbook read
 * @throws InputError with every problem of the file
 */
export async function readTable(
  source: LogSource,
  dialect: Dialect,
  open: (path: string, problems: ProblemList) => TableSink,
  form: TableForm | null = null,
): Promise<ReadTable> {
  const bytes = new ByteReader(source);
  const problems = new ProblemList();
  const intake = new Intake(bytes.path, problems, open(bytes.path, problems), form?.rows ?? null);
  const take = (items: Iterable<Row | Fault>) => intake.take(form ? form.rows.pass(items) : items);
  const decoder = decoderOf(dialect.encoding);
  const scanner = new RowScanner(dialect.separator, dialect.widths ?? null);
  let archive: Uint8Array[] | null = null;
  for await (const chunk of bytes) {
    const isFirst = bytes.bytes === chunk.length;
    if (isFirst && form && isArchive(chunk)) archive = [];
    if (archive) {
      archive.push(chunk);
      continue;
    }
    if (isFirst) refuseForeign(bytes.path, chunk, dialect);
    const { text, badByte } = decoder.push(chunk);
    take(scanner.push(text));
    if (badByte !== null) intake.take([encodingFault(scanner.position, badByte, dialect.encoding)]);
  }
  let sheet: string | null = null;
  if (archive) {
    // Loaded only when a workbook is met: few rigs write one, and every command would wait for it.
    const { takeWorkbook } = await import('./workbook/workbook.ts');
    const whole = Buffer.concat(archive);
    sheet = takeWorkbook(whole, { file: bytes.path, sheet: form!.sheet, dialect }, (rows) => {
      take(rows);
      intake.take(form!.rows.end());
      return intake.end(null);
    });
  } else {
    take(scanner.end(decoder.isInsideCharacter));
    if (form) intake.take(form.rows.end());
  }
  const findings = archive ? intake.findings : intake.end(scanner.padding);
  return { path: bytes.path, sha256: bytes.sha256(), bytes: bytes.bytes, findings, sheet };
}

function refuseForeign(file: string, head: Uint8Array, { encoding }: Dialect): void {
  const foreign = foreignSignature(head, encoding);
  if (foreign) throw new InputError([{ file, line: null, column: null, ...foreign }]);
}
