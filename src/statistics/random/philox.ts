/**
 * One block of Philox 4×32 with 10 rounds: four random 32-bit words from a counter of four words and a key of two.
 *
 * A counter-based generator: the n-th number of any stream is had without the ones before, so that work split over
 * any number of workers draws the same numbers. Salmon, Moraes, Dror & Shaw (2011), "Parallel random numbers: as easy
 * as 1, 2, 3", SC '11.
 *
 * @param out the four words, unsigned
 */
export function philox(counter: Readonly<Uint32Array>, key0: number, key1: number, out: Uint32Array): void {
  let c0 = counter[0]!;
  let c1 = counter[1]!;
  let c2 = counter[2]!;
  let c3 = counter[3]!;
  let k0 = key0;
  let k1 = key1;
  for (let round = 0; round < 10; round++) {
    const high0 = highWord(MULTIPLIER_0, c0);
    const high1 = highWord(MULTIPLIER_1, c2);
    const low0 = Math.imul(MULTIPLIER_0, c0);
    const low1 = Math.imul(MULTIPLIER_1, c2);
    c0 = high1 ^ c1 ^ k0;
    c1 = low1;
    c2 = high0 ^ c3 ^ k1;
    c3 = low0;
    k0 = (k0 + WEYL_0) | 0;
    k1 = (k1 + WEYL_1) | 0;
  }
  out[0] = c0;
  out[1] = c1;
  out[2] = c2;
  out[3] = c3;
}

const MULTIPLIER_0 = 0xd2511f53;
const MULTIPLIER_1 = 0xcd9e8d57;
const WEYL_0 = 0x9e3779b9;
const WEYL_1 = 0xbb67ae85;

/** The upper 32 bits of the product of two unsigned 32-bit words. */
function highWord(a: number, b: number): number {
  const a0 = a & 0xffff;
  const a1 = a >>> 16;
  const b0 = b & 0xffff;
  const b1 = b >>> 16;
  // Each sum stays below 2³² and is kept modulo 2³², so 32-bit arithmetic is exact.
  const middle = (Math.imul(a1, b0) + (Math.imul(a0, b0) >>> 16)) | 0;
  const cross = (Math.imul(a0, b1) + (middle & 0xffff)) | 0;
  return (Math.imul(a1, b1) + (middle >>> 16) + (cross >>> 16)) | 0;
}
