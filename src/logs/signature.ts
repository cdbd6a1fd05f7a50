import type { Encoding } from './dialect.ts';

const ZIP = [0x50, 0x4b, 0x03, 0x04];

/** First bytes by which a file that is no text, or text of another width, is known. */
const SIGNATURES: readonly {
  readonly bytes: readonly number[];
  readonly code: string;
  readonly what: string;
  readonly encoding?: Encoding;
}[] = [
  {
    bytes: [0xff, 0xfe],
    code: 'wrong-encoding',
    what: 'UTF-16 (little-endian byte order mark)',
    encoding: 'utf-16le',
  },
  {
    bytes: [0xfe, 0xff],
    code: 'wrong-encoding',
    what: 'UTF-16 (big-endian byte order mark)',
    encoding: 'utf-16be',
  },
  { bytes: ZIP, code: 'not-text', what: 'a workbook or another zip archive' },
  { bytes: [0xd0, 0xcf, 0x11, 0xe0], code: 'not-text', what: 'a binary workbook' },
  { bytes: [0x1f, 0x8b], code: 'not-text', what: 'gzip-compressed data' },
  { bytes: [0x25, 0x50, 0x44, 0x46], code: 'not-text', what: 'a PDF' },
];

/**
 * Why the first bytes of a file cannot begin a log in the code page, or null where nothing speaks against it. UTF-16
 * without a byte order mark shows by a NUL beside the first character.
 */
export function foreignSignature(
  head: Uint8Array,
  encoding: Encoding = 'utf-8',
): { code: string; message: string } | null {
  const known = SIGNATURES.find(({ bytes }) => bytes.every((byte, i) => head[i] === byte)) ?? bareUtf16(head);
  if (known?.encoding === encoding) return null;
  const marked = hasUtf8Mark(head) ? { code: 'wrong-encoding', what: 'UTF-8 by its byte order mark' } : null;
  const found = known ?? (encoding === 'utf-8' ? null : (marked ?? notUtf16(head, encoding)));
  if (!found) return null;
  const expected = encoding === 'utf-8' ? 'UTF-8' : `${encoding} as the profile says`;
  return {
    code: found.code,
    message: `the file is ${found.what}, expected ${expected}; ${settle(found.code, encoding)}`,
  };
}

/** Whether the first bytes are those of a zip archive, as an .xlsx workbook is one. */
export function isArchive(head: Uint8Array): boolean {
  return ZIP.every((byte, i) => head[i] === byte);
}

function settle(code: string, encoding: Encoding): string {
  if (code === 'not-text') return 'export the log as comma-separated text in UTF-8';
  return encoding === 'utf-8'
    ? 'save it as UTF-8; if the rig writes another code page, its profile names it (export.encoding)'
    : "name the rig's code page (export.encoding)";
}

function hasUtf8Mark([first, second, third]: Uint8Array): boolean {
  return first === 0xef && second === 0xbb && third === 0xbf;
}

/** Text of a table in UTF-16 holds NUL bytes among its first, whatever its script: the separators. */
function notUtf16(head: Uint8Array, encoding: Encoding): { code: string; what: string } | null {
  if (!encoding.startsWith('utf-16') || head.subarray(0, 1024).includes(0)) return null;
  return { code: 'wrong-encoding', what: 'no UTF-16 (there is no NUL byte)' };
}

function bareUtf16(head: Uint8Array): { code: string; what: string; encoding: Encoding } | null {
  const [first, second] = head;
  if (first === undefined || second === undefined || (first === 0) === (second === 0)) return null;
  return {
    code: 'wrong-encoding',
    what: 'UTF-16 (every other byte is NUL)',
    encoding: first === 0 ? 'utf-16be' : 'utf-16le',
  };
}
