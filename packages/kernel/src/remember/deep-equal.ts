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
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (!deepEqual(a[i], b[i])) return false;
  return true;
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

/** Whether a value is a plain object, so that its own properties are all there is to it. */
const isPlain = (value: object): value is Readonly<Record<string, unknown>> =>
  Object.getPrototypeOf(value) === Object.prototype;

function equalObjects(a: object, b: object): boolean {
  if (!isPlain(a) || !isPlain(b)) return false;
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  for (const key of keys) {
    const value = b[key];
    if (!deepEqual(a[key], value) || (value === undefined && !Object.hasOwn(b, key))) return false;
  }
  return true;
}
