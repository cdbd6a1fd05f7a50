import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { InputError } from '../../problem/problem.ts';
import type { Finding } from '../finding.ts';
import { Row } from '../row.ts';
import { foreignSignature } from '../signature.ts';
import type { SampleDialect } from './dialect.ts';
import { readLayout, type SampleLayout } from './layout.ts';

/** A drum log of which the header was read. */
export interface SampleLog {
  /** As the user gave it. */
  readonly path: string;
  /** Bytes at this moment; a file that grows is read up to here. */
  readonly size: number;
  readonly layout: SampleLayout;
  readonly findings: readonly Finding[];
}

const HEAD = 64 * 1024;

/**
 * Reads the header of a drum log; blank lines may stand before it.
 *
 * @throws InputError for a file that is empty or no text, and with every problem of the header.
 */
export function openSampleLog(path: string, dialect: SampleDialect): SampleLog {
  const { bytes, size } = readHead(path);
  const fail = (code: string, message: string, line: number | null = null): never => {
    throw new InputError([{ file: path, line, column: null, code, message }]);
  };
  if (size === 0) fail('empty-file', 'the file is empty, expected a header row and rows');
  const foreign = foreignSignature(bytes);
  if (foreign) fail(foreign.code, foreign.message);
  let at = bytes.subarray(0, 3).equals(Buffer.from([0xef, 0xbb, 0xbf])) ? 3 : 0;
  const lineEnd = bytes.includes(10) || !bytes.includes(13) ? 10 : 13;
  for (let line = 1; at < bytes.length; line++) {
    const found = bytes.indexOf(lineEnd, at);
    if (found < 0 && bytes.length < size) {
      fail('no-header', `found no line end in the first ${HEAD / 1024} kB, expected a header row`, line);
    }
    const end = found < 0 ? bytes.length : found;
    const text = decoded(bytes.subarray(at, end), path, line).replace(/\r$/u, '');
    at = end + 1;
    if (text.trim() === '') continue;
    const cells = text.split(dialect.separator);
    const header = new Row({ line, text, cells, starts: null, isEnded: true, isCut: false });
    const place = { header: text, bodyOffset: Math.min(at, size), lineEnd } as const;
    return { path, size, ...readLayout(header, path, place, dialect) };
  }
  return fail('no-header', 'found only blank lines, expected a header row and rows');
}

function decoded(bytes: Buffer, path: string, line: number): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    const message =
      'the header is not UTF-8; if the rig writes another code page, its profile names it (export: encoding)';
    throw new InputError([{ file: path, line, column: null, code: 'wrong-encoding', message }]);
  }
}

function readHead(path: string): { bytes: Buffer; size: number } {
  let handle: number | null = null;
  try {
    handle = openSync(path, 'r');
    const { size } = fstatSync(handle);
    const bytes = Buffer.alloc(Math.min(HEAD, size));
    readSync(handle, bytes, 0, bytes.length, 0);
    return { bytes, size };
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? 'unknown reason';
    const message =
      code === 'ENOENT' ? 'there is no such file; check the path' : `the file cannot be read (${code})`;
    const problem = code === 'ENOENT' ? 'no-such-file' : 'unreadable-file';
    throw new InputError([{ file: path, line: null, column: null, code: problem, message }]);
  } finally {
    if (handle !== null) closeSync(handle);
  }
}
