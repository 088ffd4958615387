import type { AssignLine } from "@pinwright/engine";

/** Lines with the same feeds, that the same sites may be on. */
export interface LineKind {
  readonly feedMm: readonly number[];
  readonly lines: readonly number[];
}

/** One direction of an assignment problem, as the proof needs it. */
export interface Side {
  /** Lines that differ in nothing, as the pins of one housing, are one kind: the proof need not tell them apart. */
  readonly kinds: readonly LineKind[];
  readonly mm: readonly (readonly number[])[];
  /** Harness of each site. */
  readonly groupOf: readonly number[];
  readonly pinned: readonly (number | null)[];
  /** Most sites that a line can have: the number of lines of the other direction. */
  readonly most: number;
}

/** For each kind of line the mm of its shortest chains through every subset of sites; Infinity where it may not have them. */
export type SubsetLengths = readonly Float64Array[];

const bitCount = (mask: number): number => {
  let count = 0;
  for (let rest = mask; rest !== 0; rest &= rest - 1) count++;
  return count;
};

/**
 * Shortest chains of every kind of line through every subset of at most `most` sites, by dynamic programming over subsets from
 * the far end (M. Held, R. Karp, J. SIAM 10 (1962) 196–210): n² 2ⁿ steps. Sites of several harnesses are chains that
 * are added up.
 */
export function subsetLengths(side: Side): SubsetLengths {
  const n = side.groupOf.length;
  const from = chainsFrom(side, n);
  const groups = [...new Set(side.groupOf)];
  const groupMasks = groups.map((group) =>
    side.groupOf.reduce((mask, own, i) => (own === group ? mask | (1 << i) : mask), 0),
  );
  return side.kinds.map(({ feedMm, lines }) => {
    const allowed = side.pinned.reduce<number>(
      (mask, pin, i) =>
        (pin === null || lines.includes(pin)) && Number.isFinite(feedMm[i] ?? Number.POSITIVE_INFINITY)
          ? mask | (1 << i)
          : mask,
      0,
    );
    const lengths = new Float64Array(1 << n).fill(Number.POSITIVE_INFINITY);
    lengths[0] = 0;
    for (let mask = 1; mask < lengths.length; mask++) {
      if ((mask & ~allowed) !== 0 || bitCount(mask) > side.most) continue;
      let sum = 0;
      for (const group of groupMasks) if ((mask & group) !== 0) sum += fed(from, n, mask & group, feedMm);
      lengths[mask] = sum;
    }
    return lengths;
  });
}

/** Shortest way through a subset from each of its sites, at `mask × n + site`. */
function chainsFrom({ mm, groupOf, most }: Side, n: number): Float64Array {
  const from = new Float64Array((1 << n) * n).fill(Number.POSITIVE_INFINITY);
  for (let i = 0; i < n; i++) from[(1 << i) * n + i] = 0;
  for (let mask = 1; mask < 1 << n; mask++) {
    if (bitCount(mask) >= most) continue;
    for (let next = 0; next < n; next++) {
      const length = from[mask * n + next] ?? Number.POSITIVE_INFINITY;
      if (length === Number.POSITIVE_INFINITY) continue;
      for (let first = 0; first < n; first++) {
        if ((mask & (1 << first)) !== 0 || groupOf[first] !== groupOf[next]) continue;
        const at = (mask | (1 << first)) * n + first;
        const longer = length + (mm[first]?.[next] ?? Number.POSITIVE_INFINITY);
        if (longer < (from[at] ?? 0)) from[at] = longer;
      }
    }
  }
  return from;
}

function fed(from: Float64Array, n: number, mask: number, feedMm: readonly number[]): number {
  let best = Number.POSITIVE_INFINITY;
  for (let i = 0; i < n; i++)
    if ((mask & (1 << i)) !== 0) best = Math.min(best, (from[mask * n + i] ?? 0) + (feedMm[i] ?? 0));
  return best;
}

/** Lines by kind. A line that a site is pinned to is of a kind of its own. */
export function kindsOf(
  lines: readonly AssignLine[],
  pinned: readonly (number | null)[],
): readonly LineKind[] {
  const kinds = new Map<string, { feedMm: readonly number[]; lines: number[] }>();
  lines.forEach(({ feedMm }, line) => {
    const key = pinned.includes(line) ? `line ${line}` : feedMm.join(" ");
    const kind = kinds.get(key);
    if (kind === undefined) kinds.set(key, { feedMm, lines: [line] });
    else kind.lines.push(line);
  });
  return [...kinds.values()];
}
