import type { SampleColumn, SampleLayout } from './layout.ts';
import { wholeNumber } from './whole-number.ts';

/**
 * The numbers that a rig writes for "no value", in steps of one column. What lies between `low` and `high` (both
 * excluded) is a value for certain, so that a value is rarely looked up.
 */
export class ColumnSentinels {
  readonly low: number;
  readonly high: number;
  readonly #steps: ReadonlySet<number>;

  constructor(column: SampleColumn, { dialect }: SampleLayout) {
    const { decimal } = dialect;
    // The profile may write its numbers with a decimal point, or as the rig does.
    const marks = decimal === '.' ? (['.'] as const) : ([decimal, '.'] as const);
    const steps =
      column.role === 'elapsed'
        ? []
        : [...dialect.sentinels, ...column.sentinels]
            .flatMap((text) => marks.map((mark) => wholeNumber(text, mark, column.decimals)))
            .filter((step) => !Number.isNaN(step));
    this.#steps = new Set(steps);
    this.low = Math.max(Number.NEGATIVE_INFINITY, ...steps.filter((step) => step <= 0));
    this.high = Math.min(Number.POSITIVE_INFINITY, ...steps.filter((step) => step > 0));
  }

  has(value: number): boolean {
    return this.#steps.has(value);
  }

  /** The value, or NaN where it is a sentinel. */
  read(value: number): number {
    return this.has(value) ? Number.NaN : value;
  }
}
