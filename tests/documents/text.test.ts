import { describe, expect, it } from 'vitest';
import { decodeText } from '../../src/documents/text.ts';
import { InputError } from '../../src/problem/problem.ts';

function problem(bytes: number[] | Buffer): unknown {
  try {
    return decodeText(Buffer.from(bytes), 'a.yaml');
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return error.problems.map(({ line, column, code }) => `${line}:${column} ${code}`);
  }
}

describe('the text of a document', () => {
  it('is UTF-8, its byte-order mark dropped', () => {
    expect(decodeText(Buffer.from('\ufeffä: 1\n'), 'a.yaml')).toBe('ä: 1\n');
  });

  it.each([
    ['a byte of another code page', Buffer.from('a: 1\nb: H\xf6he\n', 'latin1'), ['2:5 not-utf8']],
    ['a character cut off at the end', [0x61, 0xe2, 0x82], ['1:2 not-utf8']],
    ['a NUL byte', Buffer.from('a: 1\nä: \0x\n'), ['2:4 nul-byte']],
    ['UTF-16, little end first', [0xff, 0xfe, 0x61, 0], ['1:1 not-utf8']],
    ['UTF-16, big end first', [0xfe, 0xff, 0, 0x61], ['1:1 not-utf8']],
  ])('%s is refused at its place', (_, bytes, expected) => {
    expect(problem(bytes)).toEqual(expected);
  });
});
