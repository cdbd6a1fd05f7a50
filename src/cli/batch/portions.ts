/** Parts of a list of so many each, the last one shorter. */
export function* portions<Item>(items: readonly Item[], size: number): Generator<Item[]> {
  for (let from = 0; from < items.length; from += size) yield items.slice(from, from + size);
}
