import { SampleBatch } from './batch.ts';
import type { SampleLayout } from './layout.ts';

/** Bytes that may be read (not used) behind the last line end, so that the hot path needs no bounds. */
export const SLACK = 64;

const PAGE = 1 << 16;
const MINUTE_WORDS = 4;

/** All that the reading of rows touches, in one memory, which WebAssembly programs see as the code around them does. */
export class RowMemory {
  readonly memory: WebAssembly.Memory;
  /** Bytes of the file, and SLACK more. */
  readonly bytes: Buffer;
  readonly batch: SampleBatch;
  /** The minute at hand, as `ClockMinute` keeps it. */
  readonly minute: Int32Array;

  /** @param window bytes of the file that are held at once */
  constructor(layout: SampleLayout, capacity: number, window: number) {
    const parts = [MINUTE_WORDS * 4, SampleBatch.size(layout, capacity), window + SLACK];
    const pages = Math.ceil(parts.reduce((sum, part) => sum + part, 0) / PAGE);
    this.memory = new WebAssembly.Memory({ initial: pages, maximum: pages });
    const { buffer } = this.memory;
    this.minute = new Int32Array(buffer, 0, MINUTE_WORDS);
    this.batch = new SampleBatch(layout, capacity, buffer, parts[0]!);
    this.bytes = Buffer.from(buffer, parts[0]! + parts[1]!, parts[2]!);
  }
}
