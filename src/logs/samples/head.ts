import { closeSync, fstatSync, openSync, readSync, statSync } from 'node:fs';
import { quote } from '../../problem/echo.ts';
import { InputError } from '../../problem/problem.ts';
import { textOf } from '../code-page.ts';
import type { ExportProfile } from '../export/profile.ts';
import { ExportRows } from '../export/rows.ts';
import type { Finding } from '../finding.ts';
import { instantOf } from '../instant.ts';
import { scanQuoted } from '../quoted.ts';
import { Row } from '../row.ts';
import { foreignSignature } from '../signature.ts';
import type { SampleDialect } from './dialect.ts';
import {
  type Export,
  type HeaderPlace,
  readLayout,
  SAMPLE_EXPORT_COLUMNS,
  type SampleLayout,
} from './layout.ts';
import { kindsAt, positionsOfHeader, positionsOfProfile } from './positions.ts';

/** A drum log of which the header was read. */
export interface SampleLog {
  /** As the user gave it. */
  readonly path: string;
  /** Bytes at this moment; a file that grows is read up to here. */
  readonly size: number;
  readonly layout: SampleLayout;
  readonly findings: readonly Finding[];
}

/** Bytes of a log now; it may have grown since it was opened. 0 where it is gone. */
export function sizeNow(path: string): number {
  return statSync(path, { throwIfNoEntry: false })?.size ?? 0;
}

const HEAD = 64 * 1024;

/** A line of the head: the row, and the byte behind its line end. */
interface HeadLine {
  readonly row: Row;
  readonly next: number;
}

/** The first bytes of a log, and how its lines end. */
interface Head {
  readonly path: string;
  readonly size: number;
  readonly bytes: Buffer;
  readonly lineEnd: 10 | 13;
  readonly dialect: SampleDialect;
}

/**
 * Reads the header of a drum log: in plain form after blank lines at most, else where the profile of its rig says.
 *
 * @param position of the drum whose columns are read, where each has its own
 * @throws InputError for a file that is empty or no text, and with every problem of the header.
 */
export function openSampleLog(
  path: string,
  dialect: SampleDialect,
  profile: ExportProfile | null = null,
  position: string | null = null,
): SampleLog {
  const { row, size, place, own, from, findings } = findHeader(path, dialect, profile);
  const read = readLayout(row, path, place, own, from, position);
  return { path, size, layout: read.layout, findings: [...findings, ...read.findings] };
}

/**
 * The positions of the drum that have columns of their own in a log, `A` and `B` of `load A`, `load B`; empty where
 * there is one position.
 *
 * @throws InputError as `openSampleLog` does, but for what is wrong with the columns.
 */
export function positionsOfLog(
  path: string,
  dialect: SampleDialect,
  profile: ExportProfile | null = null,
): readonly string[] {
  const { row } = findHeader(path, dialect, profile);
  return positionsOfHeader(row.cells, profile);
}

/** A header where it was found, and what stands around it. */
interface FoundHeader {
  readonly row: Row;
  readonly size: number;
  readonly place: HeaderPlace;
  /** The dialect with the start that the head states. */
  readonly own: SampleDialect;
  readonly from: Export | null;
  readonly findings: readonly Finding[];
}

function findHeader(path: string, dialect: SampleDialect, profile: ExportProfile | null): FoundHeader {
  const { bytes, size } = readHead(path);
  if (size === 0) throw fault(path, 'empty-file', 'the file is empty, expected a header row and rows');
  const foreign = foreignSignature(bytes, dialect.encoding);
  if (foreign) throw fault(path, foreign.code, foreign.message);
  const lineEnd = bytes.includes(10) || !bytes.includes(13) ? 10 : 13;
  const head: Head = { path, size, bytes, lineEnd, dialect };
  return profile === null ? plainHeader(head) : exportedHeader(head, profile);
}

function plainHeader(head: Head): FoundHeader {
  const { path, size, lineEnd, dialect } = head;
  for (const { row, next } of linesOf(head)) {
    if (row.text.trim() === '') continue;
    const place = { header: row.text, head: NO_HEAD, bodyOffset: Math.min(next, size), lineEnd, start: 0 };
    return { row, size, place, own: dialect, from: null, findings: [] };
  }
  throw fault(path, 'no-header', 'found only blank lines, expected a header row and rows');
}

/** What stands above the rows goes through the reader of exports, as that of a drop log does. */
function exportedHeader(head: Head, profile: ExportProfile): FoundHeader {
  const { path, size, lineEnd } = head;
  const [position = null] = positionsOfProfile(profile);
  const named = [...profile.columns.values()].map(({ name }) => name);
  const rows = new ExportRows(profile, kindsAt(SAMPLE_EXPORT_COLUMNS, position, named, profile));
  const above: string[] = [];
  for (const { row, next } of linesOf(head)) {
    above.push(row.text);
    for (const item of rows.pass([row])) {
      if (!(item instanceof Row)) throw fault(path, item.code, item.message, item.line, item.column);
      const start = startOf(rows, profile, path);
      const time = start === null ? head.dialect.time : ({ kind: 'seconds', start } as const);
      const names = above.slice(-profile.header.length).filter((text) => text !== item.text);
      const keys = rows.metadata.map(({ key }) => key).filter((key) => key !== '');
      const metadata = rows.metadata.map(({ line, key, value }) => ({
        code: 'metadata',
        message: `before the header: ${quote(`${key}: ${value}`)}`,
        line,
        column: null,
      }));
      return {
        row: item,
        size,
        place: {
          header: item.text,
          head: { rows: names, keys },
          bodyOffset: Math.min(next, size),
          lineEnd,
          start: start ?? 0,
        },
        own: { ...head.dialect, time },
        from: { profile, units: rows.units },
        findings: [...rows.findings, ...metadata],
      };
    }
  }
  const [missing] = [...rows.end()];
  throw fault(
    path,
    missing?.code ?? 'no-header',
    missing?.message ??
      'found no header where the profile has it, expected one (export.preamble, export.header)',
    missing?.line ?? null,
  );
}

const NO_HEAD = { rows: [], keys: [] };

/** Milliseconds since 1970 that relative seconds count from; null where times are of another form. */
function startOf(rows: ExportRows, { time }: ExportProfile, path: string): number | null {
  if (time?.kind !== 'seconds') return null;
  if (typeof time.start === 'number') return time.start;
  const stated = rows.valueOf(time.start.key);
  const instant = stated === null ? null : instantOf(stated.value);
  if (instant !== null) return instant;
  const found =
    stated === null
      ? `no line ${quote(time.start.key)}`
      : `${quote(stated.value)} at ${quote(time.start.key)}`;
  const message = `found ${found} before the header, expected the start as ISO 8601 with its offset; the profile may give it (export.time.start)`;
  throw fault(path, 'no-start', message, stated?.line ?? 1, 1);
}

function* linesOf({ path, bytes, size, lineEnd, dialect }: Head): Generator<HeadLine> {
  let at = bytes.subarray(0, 3).equals(Buffer.from([0xef, 0xbb, 0xbf])) ? 3 : 0;
  for (let line = 1; at < bytes.length; line++) {
    const found = bytes.indexOf(lineEnd, at);
    if (found < 0 && bytes.length < size) {
      const message = `found no line end in the first ${HEAD / 1024} kB, expected a header row`;
      throw fault(path, 'no-header', message, line);
    }
    const end = found < 0 ? bytes.length : found;
    const text = textOf(bytes.subarray(at, end), dialect.encoding).replace(/\r$/u, '');
    if (text.includes('\ufffd')) throw wrongEncoding(path, line, dialect);
    const quoted = text.includes('"') ? scanQuoted(text, 0, dialect.separator) : null;
    const cells = quoted?.cells ?? text.split(dialect.separator);
    at = end + 1;
    const row = new Row({ line, text, cells, starts: quoted?.starts ?? null, isEnded: true, isCut: false });
    yield { row, next: at };
  }
}

function wrongEncoding(path: string, line: number, { encoding }: SampleDialect): InputError {
  const message =
    encoding === 'utf-8'
      ? 'the header is not UTF-8; if the rig writes another code page, its profile names it (export.encoding)'
      : `the header is not ${encoding}, as the profile says; name the rig's code page (export.encoding)`;
  return fault(path, 'wrong-encoding', message, line);
}

function fault(
  file: string,
  code: string,
  message: string,
  line: number | null = null,
  column: number | null = null,
): InputError {
  return new InputError([{ file, line, column, code, message }]);
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
    throw fault(path, code === 'ENOENT' ? 'no-such-file' : 'unreadable-file', message);
  } finally {
    if (handle !== null) closeSync(handle);
  }
}
