/** The value under a key, made and kept when it is not there yet. */
export function kept<K, V>(
  map: { get(key: K): V | undefined; set(key: K, value: V): unknown },
  key: K,
  make: () => V,
): V {
  const found = map.get(key);
  if (found !== undefined) return found;
  const made = make();
  map.set(key, made);
  return made;
}

/** Adds to the list under a key. */
export function push<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  kept(map, key, () => []).push(value);
}

/** An object by name, without a prototype: a part may be called `constructor`. */
export function record<V>(entries: Iterable<readonly [string, V]> = []): Record<string, V> {
  return Object.assign(Object.create(null), Object.fromEntries(entries)) as Record<string, V>;
}
