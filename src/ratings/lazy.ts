/** A table is looked at, and frozen, only when first asked for. */

function deepFreeze(value: unknown): void {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return;
  Object.freeze(value);
  for (const inner of Object.values(value)) deepFreeze(inner);
}

/** The shape of each file is held by the tests; here it is only taken once and frozen. */
export function lazy<T>(file: unknown): () => T {
  let taken = false;
  return () => {
    if (!taken) deepFreeze(file);
    taken = true;
    return file as T;
  };
}
