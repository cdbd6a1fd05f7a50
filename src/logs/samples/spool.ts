import { createHash } from 'node:crypto';
import {
  closeSync,
  createReadStream,
  createWriteStream,
  mkdtempSync,
  openSync,
  readSync,
  rmSync,
  statSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { InputError } from '../../problem/problem.ts';
import type { LogSource } from '../bytes.ts';
import { decoderOf } from '../code-page.ts';
import type { Dialect } from '../dialect.ts';
import type { ExportProfile } from '../export/profile.ts';
import type { Row } from '../row.ts';
import { foreignSignature, isArchive } from '../signature.ts';

/** A log that lies in a file, and can be read at any place. */
export interface KeptLog {
  readonly path: string;
  /** What messages and results call it. */
  readonly named: string;
  /** How it is written there; null for the plain form. */
  readonly profile: ExportProfile | null;
  /** 0 where it is not there: whoever reads it says so. */
  readonly bytes: number;
  /** Hash and length of what the person gave, where the file is a copy in another code page or of a sheet. */
  readonly original: { readonly sha256: string; readonly bytes: number } | null;
  /** Takes away what was written for it. */
  remove(): void;
}

/**
 * The file of a log. Standard input is written to a temporary one first, since parts of a drum log are read side by side
 * and some again; so are text of two bytes a character and a sheet of a workbook, in UTF-8 and line for line.
 *
 * @throws InputError for a workbook that cannot be read, and for bytes that are no UTF-16
 */
export async function keepAsFile(source: LogSource, profile: ExportProfile | null = null): Promise<KeptLog> {
  if (typeof source === 'string') return kept({ path: source, named: source }, profile);
  if ('named' in source) return kept(source, profile);
  const { path, remove } = temporary();
  try {
    await pipeline(Readable.from(source), createWriteStream(path));
    const log = await kept({ path, named: '-' }, profile);
    const removeBoth = () => {
      log.remove();
      remove();
    };
    return { ...log, remove: removeBoth };
  } catch (error) {
    remove();
    throw error;
  }
}

interface Given {
  readonly path: string;
  readonly named: string;
}

async function kept({ path, named }: Given, profile: ExportProfile | null): Promise<KeptLog> {
  const head = profile === null ? null : headOf(path);
  const isWorkbook = head !== null && isArchive(head);
  if (head === null || (!isWorkbook && !profile!.dialect.encoding.startsWith('utf-16'))) {
    const bytes = statSync(path, { throwIfNoEntry: false })?.size ?? 0;
    return { path, named, profile, bytes, original: null, remove: () => {} };
  }
  const foreign = isWorkbook ? null : foreignSignature(head, profile!.dialect.encoding);
  if (foreign) throw new InputError([{ file: named, line: null, column: null, ...foreign }]);
  const { path: copy, remove } = temporary();
  try {
    const original = isWorkbook
      ? await copySheet({ path, named }, profile!, copy)
      : await copyText({ path, named }, profile!.dialect, copy);
    const dialect = { ...profile!.dialect, encoding: 'utf-8' } as const;
    return {
      path: copy,
      named,
      profile: { ...profile!, dialect },
      bytes: statSync(copy).size,
      original,
      remove,
    };
  } catch (error) {
    remove();
    throw error;
  }
}

/** Text of another code page in UTF-8; line ends stay, so lines keep their numbers. */
async function copyText({ path, named }: Given, { encoding }: Dialect, copy: string) {
  const hash = createHash('sha256');
  const decoder = decoderOf(encoding);
  let bytes = 0;
  let lines = 1;
  async function* texts(): AsyncGenerator<string> {
    for await (const chunk of createReadStream(path) as AsyncIterable<Buffer>) {
      hash.update(chunk);
      bytes += chunk.length;
      const { text, badByte } = decoder.push(chunk);
      lines += text.split('\n').length - 1;
      yield text;
      if (badByte === null) continue;
      const message = `found bytes that are no ${encoding}, expected it as the profile says; name the rig's code page (export.encoding)`;
      throw new InputError([{ file: named, line: lines, column: null, code: 'wrong-encoding', message }]);
    }
  }
  await pipeline(Readable.from(texts()), createWriteStream(copy));
  return { sha256: hash.digest('hex'), bytes };
}

/** The rows of a sheet as lines of text, each at its own line. */
async function copySheet({ path, named }: Given, profile: ExportProfile, copy: string) {
  const { takeWorkbook } = await import('../workbook/workbook.ts');
  const chunks: Buffer[] = [];
  for await (const chunk of createReadStream(path) as AsyncIterable<Buffer>) chunks.push(chunk);
  const whole = Buffer.concat(chunks);
  let rows: readonly Row[] = [];
  const { dialect, sheet } = profile;
  takeWorkbook(whole, { file: named, sheet, dialect }, (taken) => {
    rows = taken;
  });
  function* lines(): Generator<string> {
    let line = 1;
    for (const row of rows) {
      while (line < row.line) {
        yield '\n';
        line++;
      }
      yield `${row.cells.map((cell) => quoted(cell, dialect.separator)).join(dialect.separator)}\n`;
      line++;
    }
  }
  await pipeline(Readable.from(lines()), createWriteStream(copy));
  return { sha256: createHash('sha256').update(whole).digest('hex'), bytes: whole.length };
}

function quoted(cell: string, separator: string): string {
  const bare = cell.replaceAll(/[\r\n]+/gu, ' ');
  return bare.includes(separator) || bare.includes('"') ? `"${bare.replaceAll('"', '""')}"` : bare;
}

function temporary(): { path: string; remove: () => void } {
  const folder = mkdtempSync(join(tmpdir(), 'tirelab-'));
  return {
    path: join(folder, 'log.csv'),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}

/** The first bytes; null where the file cannot be read, which whoever reads it will say. */
function headOf(path: string): Buffer | null {
  try {
    const bytes = Buffer.alloc(1024);
    const handle = openSync(path, 'r');
    try {
      return bytes.subarray(0, readSync(handle, bytes, 0, bytes.length, 0));
    } finally {
      closeSync(handle);
    }
  } catch {
    return null;
  }
}
