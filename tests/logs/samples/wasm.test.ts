import { describe, expect, it } from 'vitest';
import { callable, F64, I32, I64, WasmCode } from '../../../src/logs/samples/wasm.ts';

// That the bytes mean what they say is for the engine's own decoder and checker to tell, which refuse any other.

const memory = new WebAssembly.Memory({ initial: 1, maximum: 1 });
const view = new DataView(memory.buffer);

const constant = (code: WasmCode, result: number) =>
  callable<() => number | bigint>({ parameters: [], result, locals: [], code }, memory)();

describe('a function in WebAssembly', () => {
  it.each([0, 1, -1, 63, 64, -64, -65, 8191, 8192, 2 ** 31 - 1, -(2 ** 31)])(
    'holds the number %i',
    (value) => {
      expect(constant(new WasmCode().i32(value), I32)).toBe(value);
      expect(constant(new WasmCode().i64(BigInt(value)), I64)).toBe(BigInt(value));
      expect(constant(new WasmCode().f64(value), F64)).toBe(value);
    },
  );

  it.each([2n ** 63n - 1n, -(2n ** 63n), 2n ** 64n - 1n, 0x0f0f0f0f0f0f0f0fn])(
    'holds the word %i',
    (value) => {
      expect(constant(new WasmCode().i64(value), I64)).toBe(BigInt.asIntN(64, value));
    },
  );

  it('reads and writes the memory at an address and an offset of more than one byte', () => {
    view.setBigInt64(1000, -5n, true);
    const code = new WasmCode().i32(8).get(0).store('f64Store', 2000);
    code.get(1).load('i64Load', 900);
    const read = callable<(value: number, at: number) => bigint>(
      { parameters: [F64, I32], result: I64, locals: [], code },
      memory,
    );
    expect(read(0.1, 100)).toBe(-5n);
    expect(view.getFloat64(2008, true)).toBe(0.1);
  });

  it('counts in a loop that it leaves', () => {
    const code = new WasmCode().open('block').open('loop');
    code.get(1).get(0).op('i32GeS').leave(1);
    code.get(1).i32(1).op('i32Add').set(1).leave(0, false).op('end', 'end').get(1);
    const count = callable<(to: number) => number>(
      { parameters: [I32], result: I32, locals: [I32], code },
      memory,
    );
    expect(count(300)).toBe(300);
  });
});
