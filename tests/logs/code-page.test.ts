import { describe, expect, it } from 'vitest';
import { decoderOf } from '../../src/logs/code-page.ts';

// Bytes by the indexes of the WHATWG Encoding Standard, from memory; UTF-16 by the Unicode Standard.
describe('decoderOf', () => {
  it.each([
    ['windows-1252', [0x80, 0x85, 0xb0, 0xb5, 0xe4, 0x9f], '€…°µäŸ'],
    ['utf-16le', [0xff, 0xfe, 0xb0, 0x00, 0x43, 0x00], '°C'],
    ['utf-16be', [0xfe, 0xff, 0x00, 0xb0, 0x00, 0x43], '°C'],
    ['shift_jis', [0x8d, 0x82, 0x82, 0xb3], '高さ'],
    ['gbk', [0xb8, 0xdf, 0xb6, 0xc8], '高度'],
  ] as const)('reads %s however it is cut', (encoding, bytes, text) => {
    const whole = decoderOf(encoding);
    expect(whole.push(Uint8Array.from(bytes))).toEqual({ text, badByte: null });
    expect(whole.isInsideCharacter).toBe(false);
    const cut = decoderOf(encoding);
    expect(bytes.map((byte) => cut.push(Uint8Array.of(byte)).text).join('')).toBe(text);
    expect(cut.isInsideCharacter).toBe(false);
  });

  it.each([
    ['windows-1252', [0x41, 0x81, 0x42], { text: 'A', badByte: 0x81 }],
    ['shift_jis', [0x41, 0xfc, 0x20], { text: 'A', badByte: 'unknown' }],
    ['gbk', [0x41, 0xff, 0x42], { text: 'A', badByte: 'unknown' }],
    ['utf-16le', [0x41, 0x00, 0x00, 0xdc, 0x42, 0x00], { text: 'A', badByte: 'unknown' }],
  ] as const)('stops at bytes that are no %s', (encoding, bytes, expected) => {
    expect(decoderOf(encoding).push(Uint8Array.from(bytes))).toEqual(expected);
  });

  it('knows that a file breaks off inside a character', () => {
    const decoder = decoderOf('shift_jis');
    expect(decoder.push(Uint8Array.of(0x41, 0x8d)).text).toBe('A');
    expect(decoder.isInsideCharacter).toBe(true);
  });
});
