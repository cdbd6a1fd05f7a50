/** Types of values, as a module names them (WebAssembly Core Specification 2.0, 5.3.1). */
export const I32 = 0x7f;
export const I64 = 0x7e;
export const F64 = 0x7c;

/** Instructions of one byte, and those with an operand that `WasmCode` writes (same, 5.4). */
const OP = {
  block: 0x02,
  loop: 0x03,
  end: 0x0b,
  br: 0x0c,
  brIf: 0x0d,
  localGet: 0x20,
  localSet: 0x21,
  i64Load: 0x29,
  i32Load8U: 0x2d,
  i32Store: 0x36,
  f64Store: 0x39,
  i32Const: 0x41,
  i64Const: 0x42,
  f64Const: 0x44,
  i32Eq: 0x46,
  i32LtU: 0x49,
  i32GtS: 0x4a,
  i32GtU: 0x4b,
  i32GeS: 0x4e,
  i64Ne: 0x52,
  f64Le: 0x65,
  f64Ge: 0x66,
  i32Add: 0x6a,
  i32Sub: 0x6b,
  i32Or: 0x72,
  i32Shl: 0x74,
  i64Add: 0x7c,
  i64Mul: 0x7e,
  i64And: 0x83,
  i64Or: 0x84,
  i64Xor: 0x85,
  i64Shl: 0x86,
  i64ShrU: 0x88,
  f64Add: 0xa0,
  f64Sub: 0xa1,
  f64Mul: 0xa2,
  i64ExtendI32U: 0xad,
  f64ConvertI32S: 0xb7,
  f64ConvertI64S: 0xb9,
} as const;

type Operand =
  | 'localGet'
  | 'localSet'
  | 'br'
  | 'brIf'
  | `${string}Load${string}`
  | `${string}Store`
  | `${string}Const`;
/** Instructions without an operand. */
export type PlainOp = Exclude<keyof typeof OP, Operand | 'block' | 'loop'>;

/** The body of a function, instruction by instruction; what an instruction takes, those before it have left. */
export class WasmCode {
  readonly #bytes: number[] = [];

  get bytes(): readonly number[] {
    return this.#bytes;
  }

  op(...names: readonly PlainOp[]): this {
    for (const name of names) this.#bytes.push(OP[name]);
    return this;
  }

  get(local: number): this {
    return this.#write(OP.localGet, unsigned(local));
  }

  set(local: number): this {
    return this.#write(OP.localSet, unsigned(local));
  }

  i32(value: number): this {
    return this.#write(OP.i32Const, signed(BigInt(value)));
  }

  i64(value: bigint): this {
    return this.#write(OP.i64Const, signed(BigInt.asIntN(64, value)));
  }

  f64(value: number): this {
    return this.#write(OP.f64Const, [...new Uint8Array(new Float64Array([value]).buffer)]);
  }

  /** @param offset bytes added to the address */
  load(type: 'i64Load' | 'i32Load8U', offset: number): this {
    return this.#write(OP[type], [0, ...unsigned(offset)]);
  }

  store(type: 'i32Store' | 'f64Store', offset: number): this {
    return this.#write(OP[type], [0, ...unsigned(offset)]);
  }

  /** Opens a block, which `leave(0)` leaves, or a loop, which it begins again; both leave no value. */
  open(kind: 'block' | 'loop'): this {
    return this.#write(OP[kind], [0x40]);
  }

  /** Leaves (or begins again) the block so many further out. */
  leave(depth: number, isConditional = true): this {
    return this.#write(isConditional ? OP.brIf : OP.br, unsigned(depth));
  }

  append(other: WasmCode): this {
    for (const byte of other.#bytes) this.#bytes.push(byte);
    return this;
  }

  #write(op: number, operand: readonly number[]): this {
    this.#bytes.push(op, ...operand);
    return this;
  }
}

export interface WasmFunction {
  readonly parameters: readonly number[];
  readonly result: number;
  readonly locals: readonly number[];
  readonly code: WasmCode;
}

/** The function as one that can be called; it sees the memory. */
export function callable<Callable>(given: WasmFunction, memory: WebAssembly.Memory): Callable {
  const instance = new WebAssembly.Instance(new WebAssembly.Module(moduleOf(given)), { m: { m: memory } });
  return instance.exports.f as Callable;
}

/** A module that imports memory `m.m` and exports the function as `f` (same, 5.5). */
function moduleOf({ parameters, result, locals, code }: WasmFunction): Uint8Array {
  const declared = vector(locals.map((type) => [1, type]));
  const length = declared.length + code.bytes.length + 1;
  const content = [1, ...unsigned(length), ...declared];
  const head = [
    ...[0x00, 0x61, 0x73, 0x6d, 0x01, 0x00, 0x00, 0x00],
    ...section(1, [[0x60, ...vector(parameters.map((type) => [type])), 1, result]]),
    ...section(2, [[...name('m'), ...name('m'), 0x02, 0x00, 0x00]]),
    ...section(3, [[0]]),
    ...section(7, [[...name('f'), 0x00, 0]]),
    ...[10, ...unsigned(content.length + code.bytes.length + 1), ...content],
  ];
  // The code is long and copied as a whole; what is before it is short.
  const bytes = new Uint8Array(head.length + code.bytes.length + 1);
  bytes.set(head);
  bytes.set(code.bytes, head.length);
  bytes[bytes.length - 1] = OP.end;
  return bytes;
}

function section(id: number, entries: readonly (readonly number[])[]): number[] {
  const content = vector(entries);
  return [id, ...unsigned(content.length), ...content];
}

function vector(entries: readonly (readonly number[])[]): number[] {
  return [...unsigned(entries.length), ...entries.flat()];
}

function name(text: string): number[] {
  return vector([...Buffer.from(text)].map((byte) => [byte]));
}

/** LEB128 (same, 5.2.2). */
function unsigned(value: number): number[] {
  return value < 0x80 ? [value] : [(value & 0x7f) | 0x80, ...unsigned(value >>> 7)];
}

function signed(value: bigint): number[] {
  const low = Number(value & 0x7fn);
  const rest = value >> 7n;
  const isLast = rest === (low & 0x40 ? -1n : 0n);
  return isLast ? [low] : [low | 0x80, ...signed(rest)];
}
