/** The part of the WebAssembly JavaScript interface that is used here; the types of Node leave it to those of browsers. */
declare namespace WebAssembly {
  class Memory {
    constructor(descriptor: { initial: number; maximum: number });
    readonly buffer: ArrayBuffer;
  }
  class Module {
    constructor(bytes: Uint8Array);
  }
  class Instance {
    constructor(module: Module, imports: Record<string, Record<string, unknown>>);
    readonly exports: Record<string, unknown>;
  }
}
