/** Items by a key, in the order in which the keys first come. */
export function grouped<Item, Key>(items: readonly Item[], keyOf: (item: Item) => Key): [Key, Item[]][] {
  const found = new Map<Key, Item[]>();
  for (const item of items) {
    const key = keyOf(item);
    const same = found.get(key);
    if (same === undefined) found.set(key, [item]);
    else same.push(item);
  }
  return [...found];
}
