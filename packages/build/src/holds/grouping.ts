export function push<Key, Value>(map: Map<Key, Value[]>, key: Key, value: Value): void {
  const known = map.get(key);
  if (known === undefined) map.set(key, [value]);
  else known.push(value);
}

export function grouped<Item>(items: Iterable<Item>, keyOf: (item: Item) => string): ReadonlyMap<string, readonly Item[]> {
  const groups = new Map<string, Item[]>();
  for (const item of items) push(groups, keyOf(item), item);
  return groups;
}

/** The groups alone. Most of what is grouped is one item, or none. */
export function inGroups<Item>(items: readonly Item[], keyOf: (item: Item) => string): readonly (readonly Item[])[] {
  if (items.length < 2) return items.length === 0 ? [] : [items];
  return [...grouped(items, keyOf).values()];
}

/** Those that pass: all of them, most often, and then no other list is made. */
export function only<Item>(items: readonly Item[], passes: (item: Item) => boolean): readonly Item[] {
  return items.every(passes) ? items : items.filter(passes);
}
