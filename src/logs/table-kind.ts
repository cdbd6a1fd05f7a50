import { open } from 'node:fs/promises';
import type { LogSource, NamedFile } from './bytes.ts';
import { textOf } from './code-page.ts';
import { type ColumnKind, headerColumns } from './columns.ts';
import { namesColumn } from './export/header.ts';
import type { ExportProfile } from './export/profile.ts';
import { cutAt } from './fixed-width.ts';
import { kindOfTable, NEEDED_COLUMNS, type TableKind } from './kind.ts';
import { noteRead } from './read-files.ts';
import { Row } from './row.ts';
import { isArchive } from './signature.ts';

/** A table of which only the header was looked at, ready to be read from its first byte. */
export interface LookedAt {
  readonly kind: TableKind | null;
  readonly source: LogSource;
  /** Whether it is in the plain form, whatever the rig's profile says. */
  readonly isPlain: boolean;
}

/** No header is longer; what is needed of a log to tell what it is. */
const HEAD = 64 * 1024;
/** Lines among which a header is looked for. */
const MOST_LINES = 500;

/**
 * Tells a table by its header. Standard input is read to its end, so that it can be read again. A file that cannot be
 * opened has no kind: whoever reads it says why.
 *
 * @param profile of the rig, which may call the columns otherwise; null for the plain form
 */
export async function lookAt(source: LogSource, profile: ExportProfile | null): Promise<LookedAt> {
  if (typeof source === 'string' || 'named' in source) {
    const head = await headOf(typeof source === 'string' ? source : source.path);
    return { ...kindOf(head, profile), source };
  }
  const chunks: Uint8Array[] = [];
  for await (const chunk of source) chunks.push(chunk);
  return { ...kindOf(Buffer.concat(chunks).subarray(0, HEAD), profile), source: again(chunks) };
}

/** Whether a table is in the plain form: its first line has the columns that it needs, by their plain names. */
export async function isPlainTable(
  source: string | NamedFile,
  kinds: readonly ColumnKind<string>[],
): Promise<boolean> {
  const names = plainNames(await headOf(typeof source === 'string' ? source : source.path));
  return kinds.every(({ name, isNeeded }) => !isNeeded || names.includes(name));
}

/**
 * What a header that tells no kind was most likely meant to be, so that the reader of that kind can say what is
 * missing: a table that speaks of survival is one of outcomes, any other a log of samples.
 */
function kindOf(head: Buffer, profile: ExportProfile | null): Omit<LookedAt, 'source'> {
  const plain = kindOfTable(plainNames(head));
  if (plain !== null) return { kind: plain, isPlain: true };
  if (profile !== null) {
    const exported = isArchive(head) ? null : kindByProfile(head, profile);
    return { kind: exported, isPlain: false };
  }
  return { kind: /survived|failed/iu.test(firstLine(head)) ? 'drum outcomes' : null, isPlain: true };
}

function plainNames(head: Buffer): readonly string[] {
  return headerColumns(rowOf(firstLine(head), ',')).map(({ name }) => name);
}

/** The first line that holds anything. */
function firstLine(head: Buffer): string {
  const text = textOf(head, 'utf-8').replace(/^\uFEFF/u, '');
  return text.split(/\r\n|\r|\n/u).find((line) => line.trim() !== '') ?? '';
}

/** The kind of the first line that has all columns of one, by the names that the profile gives them. */
function kindByProfile(head: Buffer, { dialect, columns }: ExportProfile): TableKind | null {
  const lines = textOf(head, dialect.encoding)
    .replace(/^\uFEFF/u, '')
    .split(/\r\n|\r|\n/u);
  for (const line of lines.slice(0, MOST_LINES)) {
    const { widths } = dialect;
    const { cells } = widths ? cutAt(line, widths, true) : rowOf(line, dialect.separator);
    const found = NEEDED_COLUMNS.find(({ names }) =>
      names.every((name) => cells.some((cell) => namesColumn(cell, { name }, columns.get(name)))),
    );
    if (found) return found.kind;
  }
  return null;
}

function rowOf(text: string, separator: string): Row {
  return new Row({ line: 1, text, cells: text.split(separator), starts: null, isEnded: true, isCut: false });
}

async function headOf(path: string): Promise<Buffer> {
  const bytes = Buffer.alloc(HEAD);
  try {
    noteRead(path);
    const file = await open(path);
    try {
      const { bytesRead } = await file.read(bytes, 0, HEAD, 0);
      return bytes.subarray(0, bytesRead);
    } finally {
      await file.close();
    }
  } catch {
    return bytes.subarray(0, 0);
  }
}

async function* again(chunks: readonly Uint8Array[]): AsyncGenerator<Uint8Array> {
  yield* chunks;
}
