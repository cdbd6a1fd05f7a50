import { type Decoded, Utf8Decoder } from './decode.ts';
import type { Encoding } from './dialect.ts';

/** Bytes in chunks cut anywhere → text, up to the first byte that is not of the code page. */
export interface Decoder {
  push(chunk: Uint8Array): Decoded;
  /** Whether the bytes so far end inside a character; asked for once, behind the last chunk. */
  readonly isInsideCharacter: boolean;
}

export function decoderOf(encoding: Encoding): Decoder {
  return encoding === 'utf-8' ? new Utf8Decoder() : new CodePageDecoder(encoding);
}

/**
 * Bytes 0x80 to 0x9F of Windows-1252, a full stop where a byte has no meaning (WHATWG Encoding Standard,
 * index-windows-1252). Node 20 decodes them as Latin-1 has them, as control characters.
 */
const WINDOWS_1252 = '€.‚ƒ„…†‡ˆ‰Š‹Œ.Ž..‘’“”•–—˜™š›œ.žŸ';

function mended(text: string): string {
  return text.replaceAll(/[\u0080-\u009f]/g, (control) => {
    const meant = WINDOWS_1252[control.charCodeAt(0) - 0x80]!;
    return meant === '.' ? control : meant;
  });
}

/**
 * How bytes that are none of a code page come out: a replacement character, a control character (U+0080
 * to U+009F) or, for the odd single byte of the East Asian ones, a private one (U+F8F0 to U+F8FF): no export has those.
 */
const WRONG = /[\u0080-\u009f\uf8f0-\uf8ff\ufffd]/;

/**
 * Bytes as text, a replacement character for what is none of the code page: for rows that are looked at one by one.
 * Code pages of two bytes a character keep the bytes of ASCII for themselves up to the digits.
 */
export function textOf(bytes: Buffer, encoding: Encoding): string {
  if (encoding === 'utf-8') return bytes.toString('utf8');
  const text = new TextDecoder(encoding, { ignoreBOM: true }).decode(bytes);
  return (encoding === 'windows-1252' ? mended(text) : text).replaceAll(new RegExp(WRONG, 'gu'), '\ufffd');
}

/** Every code page but UTF-8. */
class CodePageDecoder implements Decoder {
  readonly #decoder: InstanceType<typeof TextDecoder>;
  readonly #isWindows: boolean;
  #isStarted = false;

  constructor(encoding: Encoding) {
    this.#decoder = new TextDecoder(encoding, { ignoreBOM: true });
    this.#isWindows = encoding === 'windows-1252';
  }

  push(chunk: Uint8Array): Decoded {
    let text = this.#decoder.decode(chunk, { stream: true });
    if (!this.#isStarted && text !== '') {
      this.#isStarted = true;
      if (text.startsWith('\ufeff')) text = text.slice(1);
    }
    if (this.#isWindows) text = mended(text);
    const at = text.search(WRONG);
    if (at < 0) return { text, badByte: null };
    const code = text.charCodeAt(at);
    return { text: text.slice(0, at), badByte: this.#isWindows ? code : 'unknown' };
  }

  get isInsideCharacter(): boolean {
    return this.#decoder.decode() !== '';
  }
}
