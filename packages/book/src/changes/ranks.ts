import { generateNKeysBetween } from "fractional-indexing";

/** New ranks between two others, in code-point order; null where they have no room or are no ranks. */
function between(lower: string | null, upper: string | null, count: number): readonly string[] | null {
  if (lower !== null && upper !== null && lower >= upper) return null;
  try {
    return generateNKeysBetween(lower, upper, count);
  } catch {
    return null;
  }
}

/** Ranks for so many rows of a table that has none yet. */
export const freshRanks = (count: number): readonly string[] => generateNKeysBetween(null, null, count);

/**
 * Ranks for rows in their order, of which those that may keep theirs bring it and the others bring null. The
 * former are in the order of their ranks, then of their ids. Ranks are kept wherever they leave room: only
 * where rows with the same rank stand around a new one, or a rank is none, do further rows get new ones.
 */
export function ranksFor(kept: readonly (string | null)[]): readonly string[] {
  const ranks: string[] = [];
  for (let i = 0; i < kept.length; ) {
    const own = kept[i] ?? null;
    if (own !== null) {
      ranks.push(own);
      i++;
      continue;
    }
    const lower = ranks[i - 1] ?? null;
    let end = i;
    while (end < kept.length && !isAbove(kept[end] ?? null, lower)) end++;
    const made = between(lower, kept[end] ?? null, end - i);
    if (made === null) return freshRanks(kept.length);
    ranks.push(...made);
    i = end;
  }
  return ranks;
}

const isAbove = (rank: string | null, lower: string | null): boolean =>
  rank !== null && (lower === null || rank > lower);
