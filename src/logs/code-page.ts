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
 * Every code page but UTF-8. What cannot be decoded comes out as a replacement character, and only so: no export
 * holds one of its own. Windows-1252 gives a control character (U+0080 to U+009F) for its five bytes without meaning.
 */
class CodePageDecoder implements Decoder {
  readonly #decoder: InstanceType<typeof TextDecoder>;
  readonly #wrong: RegExp;
  #isStarted = false;

  constructor(encoding: Encoding) {
    this.#decoder = new TextDecoder(encoding, { ignoreBOM: true });
    this.#wrong = encoding === 'windows-1252' ? /[\u0080-\u009f]/ : /\ufffd/;
  }

  push(chunk: Uint8Array): Decoded {
    let text = this.#decoder.decode(chunk, { stream: true });
    if (!this.#isStarted && text !== '') {
      this.#isStarted = true;
      if (text.startsWith('\ufeff')) text = text.slice(1);
    }
    const at = text.search(this.#wrong);
    if (at < 0) return { text, badByte: null };
    const code = text.charCodeAt(at);
    return { text: text.slice(0, at), badByte: code === 0xfffd ? 'unknown' : code };
  }

  get isInsideCharacter(): boolean {
    return this.#decoder.decode() !== '';
  }
}
