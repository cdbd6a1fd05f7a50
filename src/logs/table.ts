import { InputError, ProblemList } from '../problem/problem.ts';
import { ByteReader, type LogSource } from './bytes.ts';
import { Utf8Decoder } from './decode.ts';
import type { Dialect } from './dialect.ts';
import { encodingFault } from './fault.ts';
import type { Finding } from './finding.ts';
import { Intake, type TableSink } from './intake.ts';
import { RowScanner } from './scan.ts';
import { foreignSignature } from './signature.ts';

/** A table read to its end. */
export interface ReadTable {
  /** As the user gave it; `-` for standard input. */
  readonly path: string;
  readonly sha256: string;
  readonly bytes: number;
  readonly findings: readonly Finding[];
}

/**
 * Reads one table from its first byte to its last: a header row, then rows of as many cells. Blank lines are
 * passed over; rows whose cells are all empty, a last line cut short and NUL bytes after it are left out and found.
 *
 * @param open makes what takes the rows, given the path to name and the list for problems
 * @throws InputError with every problem of the file
 */
export async function readTable(
  source: LogSource,
  dialect: Dialect,
  open: (path: string, problems: ProblemList) => TableSink,
): Promise<ReadTable> {
  const bytes = new ByteReader(source);
  const problems = new ProblemList();
  const intake = new Intake(bytes.path, problems, open(bytes.path, problems));
  const decoder = new Utf8Decoder();
  const scanner = new RowScanner(dialect.separator);
  for await (const chunk of bytes) {
    if (bytes.bytes === chunk.length) refuseForeign(bytes.path, chunk);
    const { text, badByte } = decoder.push(chunk);
    intake.take(scanner.push(text));
    if (badByte !== null) intake.take([encodingFault(scanner.position, badByte)]);
  }
  intake.take(scanner.end(decoder.isInsideCharacter));
  const findings = intake.end(scanner.padding);
  return { path: bytes.path, sha256: bytes.sha256(), bytes: bytes.bytes, findings };
}

function refuseForeign(file: string, head: Uint8Array): void {
  const foreign = foreignSignature(head);
  if (foreign) throw new InputError([{ file, line: null, column: null, ...foreign }]);
}
