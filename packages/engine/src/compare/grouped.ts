/** A list in lists, by what each is filed under, in the order of the first of each. */
export function groupedBy<T>(
  list: readonly T[],
  keyOf: (one: T) => string,
): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const one of list) {
    const key = keyOf(one);
    const known = groups.get(key);
    if (known === undefined) groups.set(key, [one]);
    else known.push(one);
  }
  return groups;
}
