/** A run of neighbours that share one fitted value: indices `from` to `to`, both included. */
export interface Block {
  readonly from: number;
  readonly to: number;
  /** `total` / `weight`. */
  readonly value: number;
  readonly total: number;
  readonly weight: number;
}

/**
 * Pools adjacent violators: the weighted least-squares fit that never falls (Ayer, Brunk, Ewing, Reid and Silverman
 * 1955) of the values `totals[i] / weights[i]`. Totals, not values, are asked for so that shares are pooled from their
 * counts without rounding. `joinTies` says of a value whether neighbours that share it are joined too; the fit is the
 * same, the blocks are fewer.
 */
export function poolAdjacent(
  totals: readonly number[],
  weights: readonly number[],
  joinTies: (value: number) => boolean = () => false,
): Block[] {
  const blocks: Block[] = [];
  for (let i = 0; i < totals.length; i++) {
    let block: Block = {
      from: i,
      to: i,
      value: totals[i]! / weights[i]!,
      total: totals[i]!,
      weight: weights[i]!,
    };
    for (let last = blocks.at(-1); last !== undefined; last = blocks.at(-1)) {
      if (last.value < block.value || (last.value === block.value && !joinTies(block.value))) break;
      const total = last.total + block.total;
      const weight = last.weight + block.weight;
      block = { from: last.from, to: block.to, value: total / weight, total, weight };
      blocks.pop();
    }
    blocks.push(block);
  }
  return blocks;
}

/** The fitted value at each index, read off the blocks. */
export function fittedValues(blocks: readonly Block[]): number[] {
  return blocks.flatMap((b) => Array.from({ length: b.to - b.from + 1 }, () => b.value));
}
