/** Ranks from 1, equal values sharing the mean of theirs. */
export function ranks(values: readonly number[]): number[] {
  const order = values.map((_, i) => i).sort((a, b) => values[a]! - values[b]!);
  const found = new Array<number>(values.length);
  for (let from = 0; from < order.length; ) {
    let to = from + 1;
    while (to < order.length && values[order[to]!] === values[order[from]!]) to++;
    for (let i = from; i < to; i++) found[order[i]!] = 0.5 * (from + 1 + to);
    from = to;
  }
  return found;
}

/** How many share each value that occurs more than once. */
export function tieSizes(values: readonly number[]): number[] {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts.values()].filter((count) => count > 1);
}

/** Throws a RangeError for lists of unequal length, of fewer than two pairs, or with what is no number. */
export function checkPairs(x: readonly number[], y: readonly number[]): void {
  if (x.length !== y.length) throw new RangeError(`${x.length} values against ${y.length}`);
  if (x.length < 2) throw new RangeError('a correlation needs two pairs or more');
  if (![...x, ...y].every(Number.isFinite)) throw new RangeError('a correlation needs finite numbers');
}

/** n!: the orders of so many, and the chance of 1 in n! that two rankings agree fully by themselves. */
export function orders(n: number): number {
  let product = 1;
  for (let k = 2; k <= n; k++) product *= k;
  return product;
}
