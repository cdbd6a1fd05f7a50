import { InputError } from '../problem/problem.ts';

/**
 * The text of a document: UTF-8, with or without a byte-order mark.
 *
 * @throws InputError for UTF-16, for bytes that are not UTF-8 and for NUL bytes, each at its line and column.
 */
export function decodeText(bytes: Uint8Array, path: string): string {
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)) {
    throw refuse(path, 1, 1, 'not-utf8', 'found UTF-16 text, expected UTF-8; save the file as UTF-8');
  }
  const nul = bytes.indexOf(0);
  if (nul >= 0) {
    const [line, column] = placeOf(bytes, nul);
    const found =
      'found a NUL byte, expected text; the file is damaged or no text file: restore or re-save it';
    throw refuse(path, line, column, 'nul-byte', found);
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    const [line, column] = placeOf(bytes, firstInvalid(bytes));
    const found =
      'found a byte that is not UTF-8 (another code page?), expected UTF-8; save the file as UTF-8';
    throw refuse(path, line, column, 'not-utf8', found);
  }
}

function refuse(file: string, line: number, column: number, code: string, message: string): InputError {
  return new InputError([{ file, line, column, code, message }]);
}

/** Offset of the first byte that no UTF-8 text can have there: the longest prefix that decodes, by bisection. */
function firstInvalid(bytes: Uint8Array): number {
  let good = 0;
  let bad = bytes.length;
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (decodes(bytes.subarray(0, middle))) good = middle;
    else bad = middle;
  }
  return good;
}

function decodes(prefix: Uint8Array): boolean {
  try {
    // A prefix may end inside a character: that is no error yet.
    new TextDecoder('utf-8', { fatal: true }).decode(prefix, { stream: true });
    return true;
  } catch {
    return false;
  }
}

function placeOf(bytes: Uint8Array, offset: number): [line: number, column: number] {
  const before = bytes.subarray(0, offset);
  const lineStart = before.lastIndexOf(0x0a) + 1;
  const line = before.reduce((count, byte) => (byte === 0x0a ? count + 1 : count), 1);
  const inLine = new TextDecoder('utf-8').decode(before.subarray(lineStart), { stream: true });
  return [line, inLine.length + 1];
}
