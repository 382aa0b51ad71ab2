/** Taking a part's or a cable's data from stock and laying its own over them. */
import { emptyMap, isTreeMap, type Spots, type TreeMap } from './tree.ts';

/** `base` with `over` laid on it: maps merge key by key, all else is replaced. Positions come along. */
export function merge(base: TreeMap, over: TreeMap, spots: Spots): TreeMap {
  const merged = emptyMap();
  const places = spots.of(merged);
  for (const [key, spot] of spots.of(base)) {
    merged[key] = base[key]!;
    places.set(key, spot);
  }
  for (const [key, spot] of spots.of(over)) {
    const below = merged[key];
    const above = over[key]!;
    merged[key] = isTreeMap(below) && isTreeMap(above) ? merge(below, above, spots) : above;
    places.set(key, spot);
  }
  return merged;
}

/** A map without some of its keys. */
export function without(map: TreeMap, keys: ReadonlySet<string>, spots: Spots): TreeMap {
  const copy = emptyMap();
  const places = spots.of(copy);
  for (const [key, spot] of spots.of(map)) {
    if (keys.has(key)) continue;
    copy[key] = map[key]!;
    places.set(key, spot);
  }
  return copy;
}
