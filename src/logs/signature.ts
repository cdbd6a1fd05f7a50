/** First bytes by which a file that is no text, or text of another width, is known. */
const SIGNATURES: readonly {
  readonly bytes: readonly number[];
  readonly code: string;
  readonly what: string;
}[] = [
  { bytes: [0xff, 0xfe], code: 'wrong-encoding', what: 'UTF-16 (little-endian byte order mark)' },
  { bytes: [0xfe, 0xff], code: 'wrong-encoding', what: 'UTF-16 (big-endian byte order mark)' },
  { bytes: [0x50, 0x4b, 0x03, 0x04], code: 'not-text', what: 'a workbook or another zip archive' },
  { bytes: [0xd0, 0xcf, 0x11, 0xe0], code: 'not-text', what: 'a binary workbook' },
  { bytes: [0x1f, 0x8b], code: 'not-text', what: 'gzip-compressed data' },
  { bytes: [0x25, 0x50, 0x44, 0x46], code: 'not-text', what: 'a PDF' },
];

/**
 * Why the first bytes of a file cannot begin UTF-8 text, or null where nothing speaks against it. UTF-16 without a
 * byte order mark shows by a NUL beside the first character.
 */
export function foreignSignature(head: Uint8Array): { code: string; message: string } | null {
  const known = SIGNATURES.find(({ bytes }) => bytes.every((byte, i) => head[i] === byte)) ?? bareUtf16(head);
  if (!known) return null;
  const settle =
    known.code === 'not-text'
      ? 'export the log as comma-separated text in UTF-8'
      : 'save it as UTF-8; if the rig writes another code page, its profile names it (export: encoding)';
  return { code: known.code, message: `the file is ${known.what}, expected UTF-8; ${settle}` };
}

function bareUtf16(head: Uint8Array): { code: string; what: string } | null {
  const [first, second] = head;
  if (first === undefined || second === undefined || (first === 0) === (second === 0)) return null;
  return { code: 'wrong-encoding', what: 'UTF-16 (every other byte is NUL)' };
}
