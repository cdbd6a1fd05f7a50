import { isUtf8 } from 'node:buffer';

/** Text up to the first byte that is not of the code page, and that byte where the decoder can tell it. */
export interface Decoded {
  readonly text: string;
  readonly badByte: number | 'unknown' | null;
}

/**
 * UTF-8 in chunks cut anywhere, without its byte order mark. A decoder of another code page has the same three
 * members.
 */
export class Utf8Decoder {
  // `ignoreBOM` keeps the mark: only at the start of the file is it one, and a chunk may begin anywhere.
  readonly #strict = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  #tail: Uint8Array = new Uint8Array(0);
  #isStarted = false;

  push(chunk: Uint8Array): Decoded {
    const bytes = this.#tail.length === 0 ? chunk : Buffer.concat([this.#tail, chunk]);
    const whole = bytes.length - unfinished(bytes);
    this.#tail = bytes.slice(whole);
    const head = bytes.subarray(0, whole);
    if (isUtf8(head)) return { text: this.#decode(head), badByte: null };
    const good = wellFormedLength(head);
    return { text: this.#decode(head.subarray(0, good)), badByte: head[good]! };
  }

  /** Whether the bytes so far end inside a character, as where a crash cut the file. */
  get isInsideCharacter(): boolean {
    return this.#tail.length > 0;
  }

  #decode(bytes: Uint8Array): string {
    const text = this.#strict.decode(bytes);
    if (this.#isStarted || text === '') return text;
    this.#isStarted = true;
    return text.startsWith('\ufeff') ? text.slice(1) : text;
  }
}

/** Bytes at the end that begin a character and do not finish it; none where they could never be one. */
function unfinished(bytes: Uint8Array): number {
  for (let back = 1; back <= Math.min(3, bytes.length); back++) {
    const byte = bytes[bytes.length - back]!;
    if (byte < 0x80) return 0;
    if (byte < 0xc0) continue;
    const needed = byte >= 0xf0 ? 4 : byte >= 0xe0 ? 3 : 2;
    return byte <= 0xf4 && needed > back ? back : 0;
  }
  return 0;
}

/** The shortest prefix that is well-formed UTF-8 is one character: step from one to the next until none is. */
function wellFormedLength(bytes: Uint8Array): number {
  let at = 0;
  for (;;) {
    const step = [1, 2, 3, 4].find((n) => at + n <= bytes.length && isUtf8(bytes.subarray(at, at + n)));
    if (step === undefined) return at;
    at += step;
  }
}
