import type { SampleBatch } from './batch.ts';
import type { SampleLayout } from './layout.ts';
import { ColumnSentinels } from './sentinels.ts';

/** What stands in a column, as the hot path asks. */
export const SKIPPED = 0;
export const NUMBER = 1;
export const TIME = 2;
export const STATE = 3;

/** What the scanner asks of each column, by its place in the row: arrays side by side, no object on the hot path. */
export class RowColumns {
  readonly kinds: Uint8Array;
  readonly targets: Float64Array[];
  readonly decimals: Int32Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
  readonly sentinels: ColumnSentinels[] = [];
  /** By the layout's columns. */
  readonly layoutSentinels: readonly ColumnSentinels[];

  constructor(layout: SampleLayout, batch: SampleBatch) {
    const count = layout.columnCount;
    this.kinds = new Uint8Array(count).fill(SKIPPED);
    this.decimals = new Int32Array(count);
    this.low = new Float64Array(count);
    this.high = new Float64Array(count);
    this.targets = Array.from({ length: count }, () => batch.time);
    if (layout.timeIndex >= 0) this.kinds[layout.timeIndex] = TIME;
    if (layout.stateIndex >= 0) this.kinds[layout.stateIndex] = STATE;
    for (const [k, column] of layout.columns.entries()) {
      const sentinels = new ColumnSentinels(column, layout);
      this.kinds[column.index] = NUMBER;
      this.decimals[column.index] = column.decimals;
      this.targets[column.index] = batch.values[k]!;
      this.sentinels[column.index] = sentinels;
      this.low[column.index] = sentinels.low;
      this.high[column.index] = sentinels.high;
    }
    this.layoutSentinels = layout.columns.map(({ index }) => this.sentinels[index]!);
  }
}
