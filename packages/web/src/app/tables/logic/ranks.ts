import { generateNKeysBetween } from "fractional-indexing";

/** Code-point order, in which the rows of a table stand by their ranks. */
const before = (a: string, b: string): boolean => a < b;

/** `count` ranks above all of `ranks`, between two of them, or on the place of an equal pair behind both. */
export function ranksAfter(ranks: readonly string[], index: number, count: number): readonly string[] {
  const low = index < 0 ? null : (ranks[index] ?? null);
  const high = ranks.slice(index + 1).find((rank) => low === null || before(low, rank)) ?? null;
  return generateNKeysBetween(low, high, count);
}

/** Indices of a longest part of `values` that ascends, so that as little as possible has to move. */
export function longestAscending(values: readonly string[]): ReadonlySet<number> {
  const tails: number[] = [];
  const previous: number[] = [];
  for (const [i, value] of values.entries()) {
    let low = 0;
    let high = tails.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (before(values[tails[middle] ?? 0] ?? "", value)) low = middle + 1;
      else high = middle;
    }
    previous[i] = low > 0 ? (tails[low - 1] ?? -1) : -1;
    tails[low] = i;
  }
  const kept = new Set<number>();
  for (let i = tails[tails.length - 1] ?? -1; i >= 0; i = previous[i] ?? -1) kept.add(i);
  return kept;
}

/** Ranks that put rows in the order given: of each row its old rank where it can stay, else a new one. */
export function ranksInOrder(ranks: readonly string[]): readonly string[] {
  const kept = longestAscending(ranks);
  const result = [...ranks];
  for (let i = 0; i < ranks.length; ) {
    if (kept.has(i)) {
      i++;
      continue;
    }
    let end = i;
    while (end < ranks.length && !kept.has(end)) end++;
    const low = i === 0 ? null : (result[i - 1] ?? null);
    const high = ranks[end] ?? null;
    for (const [k, rank] of generateNKeysBetween(low, high, end - i).entries()) result[i + k] = rank;
    i = end;
  }
  return result;
}
