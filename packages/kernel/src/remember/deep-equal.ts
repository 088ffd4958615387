/**
 * Whether two values made of plain objects, arrays, maps, sets, strings, numbers, booleans and null are equal
 * all the way down. Objects of any other kind are equal only when identical. Data must be free of cycles.
 */
export function deepEqual(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b)) return Array.isArray(a) && Array.isArray(b) && equalArrays(a, b);
  if (a instanceof Map || b instanceof Map) return a instanceof Map && b instanceof Map && equalMaps(a, b);
  if (a instanceof Set || b instanceof Set) return a instanceof Set && b instanceof Set && equalSets(a, b);
  return equalObjects(a, b);
}

function equalArrays(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((value, i) => deepEqual(value, b[i]));
}

function equalMaps(a: ReadonlyMap<unknown, unknown>, b: ReadonlyMap<unknown, unknown>): boolean {
  if (a.size !== b.size) return false;
  for (const [key, value] of a) if (!b.has(key) || !deepEqual(value, b.get(key))) return false;
  return true;
}

function equalSets(a: ReadonlySet<unknown>, b: ReadonlySet<unknown>): boolean {
  if (a.size !== b.size) return false;
  for (const value of a) if (!b.has(value)) return false;
  return true;
}

function equalObjects(a: object, b: object): boolean {
  if (Object.getPrototypeOf(a) !== Object.prototype || Object.getPrototypeOf(b) !== Object.prototype)
    return false;
  const own = Object.entries(a);
  if (own.length !== Object.keys(b).length) return false;
  const other = new Map(Object.entries(b));
  return own.every(([key, value]) => other.has(key) && deepEqual(value, other.get(key)));
}
