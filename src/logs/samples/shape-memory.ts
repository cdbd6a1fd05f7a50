import type { RowReader } from './row-program.ts';
import { shapeOf } from './row-shape.ts';
import { type ShapeContext, shapeReader } from './shape-reader.ts';

/** Shapes that are tried on a row, last used first. */
const TRIED = 6;
/** Readers that are ever written; a log of more shapes is read by the general loop where they do not fit. */
const MOST_READERS = 48;
/** Rows in a row without a fitting shape after which none is tried for a while. */
const PATIENCE = 16;
const LONGEST_PAUSE = 4096;

/** A reader, and the length of its rows. */
export interface LearntShape {
  readonly length: number;
  readonly read: RowReader;
}

/** Remembers the shapes of rows that were met, and when trying them does not pay. */
export class ShapeMemory {
  /** Last used first. */
  readonly recent: LearntShape[] = [];
  readonly #context: ShapeContext;
  readonly #known = new Map<string, LearntShape | null>();
  #readers = 0;
  #misses = 0;
  #pause = PATIENCE;
  #paused = 0;

  constructor(context: ShapeContext) {
    this.#context = context;
  }

  /** Whether shapes are worth a try at this row. */
  get isAwake(): boolean {
    if (this.#paused === 0) return true;
    this.#paused -= 1;
    return false;
  }

  /** A shape has read `rows` rows. */
  fitted(shape: LearntShape, rows: number): void {
    if (rows >= TRIED) {
      this.#misses = 0;
      this.#pause = PATIENCE;
    }
    const place = this.recent.indexOf(shape);
    if (place > 0) {
      this.recent.splice(place, 1);
      this.recent.unshift(shape);
    }
  }

  /** Learns from a row that the general loop has read; a shape that comes the second time gets its reader. */
  learn(row: string): void {
    this.#misses += 1;
    if (this.#misses >= PATIENCE) {
      this.#misses = 0;
      this.#paused = this.#pause;
      this.#pause = Math.min(LONGEST_PAUSE, this.#pause * 2);
    }
    const shape = shapeOf(row, this.#context.layout, this.#context.mark);
    if (!shape) return;
    let known = this.#known.get(shape.key);
    if (known === undefined) {
      if (this.#known.size < 1000) this.#known.set(shape.key, null);
      return;
    }
    if (known === null) {
      if (this.#readers === MOST_READERS) return;
      this.#readers += 1;
      known = { length: shape.length, read: shapeReader(shape, this.#context) };
      this.#known.set(shape.key, known);
    }
    if (this.recent.includes(known)) return;
    this.recent.unshift(known);
    this.recent.length = Math.min(this.recent.length, TRIED);
  }

  /** Forgets which shapes were used: they were of another offset. */
  forget(): void {
    this.recent.length = 0;
  }
}
