import { open } from 'node:fs/promises';
import type { LogSource } from './bytes.ts';
import { headerColumns } from './columns.ts';
import { kindOfTable, type TableKind } from './kind.ts';
import { Row } from './row.ts';

/** A table of which only the header was looked at, ready to be read from its first byte. */
export interface LookedAt {
  readonly kind: TableKind | null;
  readonly source: LogSource;
}

/** No header is longer; what is needed of a log to tell what it is. */
const HEAD = 64 * 1024;

/**
 * Tells a table by its header. Standard input is read to its end, so that it can be read again. A file that cannot be
 * opened has no kind: whoever reads it says why.
 *
 * @param separator between the cells of the header
 */
export async function lookAt(source: LogSource, separator: string): Promise<LookedAt> {
  if (typeof source === 'string' || 'named' in source) {
    return {
      kind: kindOf(await headOf(typeof source === 'string' ? source : source.path), separator),
      source,
    };
  }
  const chunks: Uint8Array[] = [];
  for await (const chunk of source) chunks.push(chunk);
  const head = Buffer.concat(chunks).subarray(0, HEAD);
  return { kind: kindOf(head, separator), source: again(chunks) };
}

/**
 * What a header that tells no kind was most likely meant to be, so that the reader of that kind can say what is
 * missing: a table that speaks of survival is one of outcomes, any other a log of samples.
 */
function kindOf(head: Uint8Array, separator: string): TableKind | null {
  const text = new TextDecoder().decode(head).replace(/^\uFEFF/u, '');
  const line = text.split(/\r\n|\r|\n/u).find((each) => each.trim() !== '');
  if (line === undefined) return null;
  const header = new Row({
    line: 1,
    text: line,
    cells: line.split(separator),
    starts: null,
    isEnded: true,
    isCut: false,
  });
  const names = headerColumns(header).map(({ name }) => name);
  return kindOfTable(names) ?? (/survived|failed/iu.test(line) ? 'drum outcomes' : null);
}

async function headOf(path: string): Promise<Uint8Array> {
  const bytes = Buffer.alloc(HEAD);
  try {
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
