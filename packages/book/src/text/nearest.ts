/**
 * Edit distance between two words: insertions, deletions, substitutions and swaps of neighbours, each 1
 * (optimal string alignment). Stops as soon as the distance must exceed `most` and then returns `most + 1`.
 */
export function editDistance(a: string, b: string, most: number): number {
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    let least = i;
    for (let j = 1; j <= b.length; j++) {
      const same = a.charCodeAt(i - 1) === b.charCodeAt(j - 1);
      let d = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + (same ? 0 : 1));
      const swapped =
        i > 1 &&
        j > 1 &&
        a.charCodeAt(i - 1) === b.charCodeAt(j - 2) &&
        a.charCodeAt(i - 2) === b.charCodeAt(j - 1);
      if (swapped) d = Math.min(d, (beforeLast[j - 2] ?? 0) + 1);
      row.push(d);
      if (d < least) least = d;
    }
    if (least > most) return most + 1;
    beforeLast = last;
    last = row;
  }
  return last[b.length] ?? 0;
}

/** Largest distance at which a word of this length is still worth offering. Common practice, no source. */
const plausibleDistance = (length: number): number =>
  length <= 2 ? 0 : length <= 4 ? 1 : Math.min(4, Math.floor(length / 3));

/**
 * The candidate nearest to `value` by edit distance without regard to case, or null when none is near enough
 * to be meant. Ties go to the candidate that is first in code-point order, so that the order of rows does not
 * matter.
 */
export function nearest(value: string, candidates: Iterable<string>): string | null {
  const wanted = value.trim().toLowerCase();
  if (wanted.length > 200) return null;
  let most = plausibleDistance(wanted.length);
  let best: string | null = null;
  for (const candidate of candidates) {
    const distance = editDistance(wanted, candidate.toLowerCase(), most);
    if (distance > most) continue;
    if (best === null || distance < most || candidate < best) best = candidate;
    most = distance;
  }
  return best;
}
