/** Pieces of work in a fixed order, cut into runs of neighbours. */
export interface Split {
  /** Index of the first piece of each run, the first being 0. */
  readonly starts: readonly number[];
  /** Of the longest run: the least that any split into as many runs has. */
  readonly longest: number;
}

/**
 * Cuts pieces of work, whose order stands, into at most `most` runs so that the longest is as short as it can be
 * (dynamic programming over first pieces; exact). Of equal splits the one whose earlier runs are shorter.
 * @param next seconds of piece i when the piece before it is in the same run
 * @param first seconds of piece i when it begins a run; not less than `next`
 */
export function splitRuns(next: readonly number[], first: readonly number[], most: number): Split {
  const n = next.length;
  const runs = Math.max(1, Math.min(most, n));
  if (n === 0) return { starts: [], longest: 0 };
  const sums = [0];
  for (const seconds of next) sums.push((sums.at(-1) ?? 0) + seconds);
  /** Seconds of the run from `from` up to, not including, `to`. */
  const run = (from: number, to: number): number =>
    (first[from] ?? 0) + (sums[to] ?? 0) - (sums[from + 1] ?? 0);
  // best[i]: longest run when the pieces from i on are cut into as many runs as rounds have passed.
  let best = Array.from({ length: n + 1 }, (_, i) => (i === n ? 0 : run(i, n)));
  const ends: number[][] = [];
  for (let round = 1; round < runs; round++) {
    const end = Array.from({ length: n }, () => n);
    const better = [...best];
    for (let i = 0; i < n; i++) {
      for (let to = i + 1; to < n; to++) {
        const own = run(i, to);
        if (own >= (better[i] ?? 0)) break;
        const longest = Math.max(own, best[to] ?? 0);
        if (longest < (better[i] ?? 0)) {
          better[i] = longest;
          end[i] = to;
        }
      }
    }
    ends.push(end);
    best = better;
  }
  const starts = [0];
  for (let round = ends.length - 1, at = 0; round >= 0; round--) {
    const to = ends[round]?.[at] ?? n;
    if (to >= n) continue;
    starts.push(to);
    at = to;
  }
  return { starts, longest: best[0] ?? 0 };
}
