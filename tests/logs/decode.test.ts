import { describe, expect, it } from 'vitest';
import { Utf8Decoder } from '../../src/logs/decode.ts';

function decoded(bytes: readonly number[], cut: number) {
  const decoder = new Utf8Decoder();
  let text = '';
  for (const part of [bytes.slice(0, cut), bytes.slice(cut)]) {
    const piece = decoder.push(Uint8Array.from(part));
    text += piece.text;
    if (piece.badByte !== null) return { text, bad: piece.badByte, isInside: false };
  }
  return { text, bad: null, isInside: decoder.isInsideCharacter };
}

/** Ill-formed sequences behind an `a`, with the first byte that cannot be: Unicode Standard 16, table 3-7. */
const ILL_FORMED: readonly [name: string, bytes: number[], bad: number][] = [
  ['a lone continuation byte', [0x61, 0x80, 0x62], 0x80],
  ['an overlong slash', [0x61, 0xc0, 0xaf, 0x62], 0xc0],
  ['an overlong three-byte form', [0x61, 0xe0, 0x80, 0xaf, 0x62], 0xe0],
  ['a surrogate', [0x61, 0xed, 0xa0, 0x80, 0x62], 0xed],
  ['beyond U+10FFFF', [0x61, 0xf4, 0x90, 0x80, 0x80, 0x62], 0xf4],
  ['a byte that never occurs', [0x61, 0xff, 0x62], 0xff],
  ['a degree sign of another code page', [0x61, 0xb0, 0x43], 0xb0],
  ['a broken sequence', [0x61, 0xe2, 0x82, 0x62], 0xe2],
];

describe('Utf8Decoder', () => {
  const whole = [...Buffer.from('\ufeffa°€😀\ufeffz')];

  it.each(Array.from({ length: whole.length + 1 }, (_, cut) => cut))(
    'joins what is cut at byte %i',
    (cut) => {
      expect(decoded(whole, cut)).toEqual({ text: 'a°€😀\ufeffz', bad: null, isInside: false });
    },
  );

  it.each(ILL_FORMED)('stops before %s, however it is cut', (_, bytes, bad) => {
    for (let cut = 0; cut <= bytes.length; cut++) {
      expect(decoded(bytes, cut)).toEqual({ text: 'a', bad, isInside: false });
    }
  });

  it('knows that the bytes end inside a character', () => {
    expect(decoded([0x61, 0xf0, 0x9f, 0x98], 2)).toEqual({ text: 'a', bad: null, isInside: true });
  });
});
