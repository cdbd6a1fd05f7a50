import { textOf } from '../code-page.ts';
import type { Encoding } from '../dialect.ts';
import type { SampleBatch } from './batch.ts';

/** The word of the state column that stood in the row before: while it stays, no string is made of it. */
export class StateWord {
  /** Its place among the batch's words; −1 before the first. */
  id = -1;
  readonly #batch: SampleBatch;
  readonly #encoding: Encoding;
  #bytes = new Uint8Array(0);

  constructor(batch: SampleBatch, encoding: Encoding) {
    this.#batch = batch;
    this.#encoding = encoding;
  }

  /** Whether bytes `first` to `end` are the word known. */
  isSame(bytes: Buffer, first: number, end: number): boolean {
    const known = this.#bytes;
    if (this.id < 0 || end - first !== known.length) return false;
    for (let i = 0; i < known.length; i++) if (bytes[first + i] !== known[i]) return false;
    return true;
  }

  /** Takes another word; false where the bytes are no text. */
  adopt(bytes: Buffer, first: number, end: number): boolean {
    const word = bytes.subarray(first, end);
    const text = textOf(word, this.#encoding);
    if (text.includes('\0') || text.includes('\ufffd')) return false;
    this.#bytes = Uint8Array.prototype.slice.call(word);
    this.id = this.#batch.stateId(text.trim());
    return true;
  }
}
