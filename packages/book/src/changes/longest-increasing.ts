/**
 * Indices of a longest strictly increasing subsequence; null is never part of one. Patience sorting: M. L.
 * Fredman, "On computing the length of longest increasing subsequences", 1975.
 */
export function longestIncreasing(values: readonly (number | null)[]): ReadonlySet<number> {
  /** Index of the least value that ends an increasing subsequence of each length. */
  const ends: number[] = [];
  const before = new Map<number, number>();
  for (const [i, value] of values.entries()) {
    if (value === null) continue;
    let [low, high] = [0, ends.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      const end = values[ends[middle] ?? -1] ?? 0;
      if (end < value) low = middle + 1;
      else high = middle;
    }
    const previous = ends[low - 1];
    if (previous !== undefined) before.set(i, previous);
    ends[low] = i;
  }
  const found = new Set<number>();
  for (let at = ends[ends.length - 1]; at !== undefined; at = before.get(at)) found.add(at);
  return found;
}
