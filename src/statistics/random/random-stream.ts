import { normalQuantile } from '../special/normal-quantile.ts';
import { philox } from './philox.ts';

/** A stream of random numbers that depends on its seed and index alone. */
export interface RandomStream {
  /** An unsigned word of 32 bits. */
  word(): number;
  /** Uniform on (0, 1), a multiple of 2⁻⁵³ that is never 0 or 1. */
  uniform(): number;
  /** Standard normal, by the quantile of one uniform number; |z| up to 8.2. */
  normal(): number;
}

/**
 * The stream of a seed with an index, such as the number of the simulated test: tests numbered alike draw alike, on
 * however many workers they run. Streams of one seed do not overlap (each has 2⁶⁶ words of its own).
 *
 * @param seed whole number from 0 to 2⁵³ − 1
 * @param index whole number from 0 to 2⁵³ − 1
 * @throws RangeError for anything else
 */
export function randomStream(seed: number, index = 0): RandomStream {
  const [key0, key1] = words('seed', seed);
  const [stream0, stream1] = words('stream index', index);
  const counter = Uint32Array.of(0, 0, stream0, stream1);
  const block = new Uint32Array(4);
  let used = 4;

  function word(): number {
    if (used === 4) {
      philox(counter, key0, key1, block);
      counter[0]!++;
      if (counter[0] === 0) counter[1]!++;
      used = 0;
    }
    return block[used++]!;
  }

  function uniform(): number {
    const high = word() >>> 6;
    const low = word() >>> 6;
    // 52 bits and a half: the middle of each cell, exact in a double.
    return (high * 0x4000000 + low + 0.5) / 0x10000000000000;
  }

  return { word, uniform, normal: () => normalQuantile(uniform()) };
}

function words(name: string, value: number): [number, number] {
  if (!Number.isSafeInteger(value) || value < 0) {
    throw new RangeError(`${name} must be a whole number from 0 to 2^53 − 1, found ${value}`);
  }
  return [value >>> 0, Math.floor(value / 0x100000000)];
}
