import { expect, it } from 'vitest';
import { philox } from '../../../src/statistics/random/philox.ts';

// Known answers of philox4x32-10 in Random123 (kat_vectors of Salmon et al. 2011): from memory, all 384 bits agreeing.
it.each([
  [[0, 0, 0, 0], [0, 0], '6627e8d5 e169c58d bc57ac4c 9b00dbd8'],
  [
    [0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff],
    [0xffffffff, 0xffffffff],
    '408f276d 41c83b0e a20bc7c6 6d5451fd',
  ],
  [
    [0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344],
    [0xa4093822, 0x299f31d0],
    'd16cfe09 94fdcceb 5001e420 24126ea1',
  ],
] as const)('gives the published words for counter %j', (counter, [key0, key1], expected) => {
  const out = new Uint32Array(4);
  philox(Uint32Array.from(counter), key0, key1, out);
  expect([...out].map((word) => word.toString(16).padStart(8, '0')).join(' ')).toBe(expected);
});
