import type { SampleLayout } from './layout.ts';

const DOUBLE = 8;
/** Time, line, first byte, end and state. */
const OWN_COLUMNS = 5;

/**
 * Some thousand rows side by side, column by column: what the scanner fills and the fold reads. Numbers are whole,
 * in 10^−decimals of the column's unit; NaN is a missing value. The arrays are used again for the next rows.
 */
export class SampleBatch {
  rows = 0;
  /** Milliseconds: since 1970 for ISO times, since the start for `elapsed`. */
  readonly time: Float64Array;
  /** Line of the row, counted from the first line of the part (which is 0). */
  readonly line: Float64Array;
  /** Byte of the file at which the row begins, and that behind its line end. */
  readonly from: Float64Array;
  readonly to: Float64Array;
  /** Place of the state's word in `states`; 0 where the log has no such column. */
  readonly state: Int32Array;
  readonly states: string[] = [''];
  /** Every numeric column of the layout, in its order. */
  readonly values: readonly Float64Array[];
  readonly capacity: number;

  /** @param buffer where the arrays lie from byte `at` on, a multiple of 8: `size` bytes */
  constructor(layout: SampleLayout, capacity: number, buffer: ArrayBuffer, at: number) {
    let next = at;
    const column = (): Float64Array => {
      next += capacity * DOUBLE;
      return new Float64Array(buffer, next - capacity * DOUBLE, capacity);
    };
    this.capacity = capacity;
    this.time = column();
    this.line = column();
    this.from = column();
    this.to = column();
    this.values = layout.columns.map(({ role }) => (role === 'elapsed' ? this.time : column()));
    this.state = new Int32Array(buffer, next, capacity);
  }

  /** Bytes of the arrays. */
  static size(layout: SampleLayout, capacity: number): number {
    return (OWN_COLUMNS + layout.columns.length) * capacity * DOUBLE;
  }

  /** The number that stands for a state's word from now on. */
  stateId(word: string): number {
    const known = this.states.indexOf(word);
    return known >= 0 ? known : this.states.push(word) - 1;
  }
}
