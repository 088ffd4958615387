/** Of these members at most so many may be chosen. */
export interface Cap {
  readonly members: readonly number[];
  readonly most: number;
}

export interface CappedSet {
  /** Chosen members, lowest first. */
  readonly chosen: readonly number[];
  /** Sum of their weights. */
  readonly value: number;
  /** No allowed set has more. Equal to `value` when the answer is proved. */
  readonly upperBound: number;
}

/** Nodes of the search tree after which the best set found is given with a bound. */
const NODE_LIMIT = 20000;

/**
 * The heaviest of all sets that keep within caps. Where caps are nested or disjoint the allowed sets are a laminar
 * matroid, and taking the heaviest that still fits, again and again, is exact (J. Edmonds, "Matroids and the greedy
 * algorithm", Mathematical Programming 1, 1971). Where caps cross, a search in counted steps goes on from there,
 * bounded by the same under a nested part of the caps.
 */
export class CappedChoice {
  readonly #count: number;
  readonly #caps: readonly Cap[];
  /** Caps that each member is under. */
  readonly #over: readonly (readonly number[])[];
  /** Caps of the nested part; all of them when the greedy choice is exact. */
  readonly #nested: Uint8Array;
  readonly #most: Float64Array;
  readonly exact: boolean;

  /** @param count members 0 … count−1; a member under no cap is free */
  constructor(count: number, caps: readonly Cap[]) {
    this.#count = count;
    this.#caps = caps;
    this.#most = Float64Array.from(caps, (cap) => cap.most);
    this.#over = Array.from({ length: count }, (_, i) =>
      caps.flatMap((cap, c) => (cap.members.includes(i) ? [c] : [])),
    );
    this.#nested = nestedPart(caps);
    this.exact = this.#nested.every((kept) => kept === 1);
  }

  /** Whether a set keeps within every cap. */
  allows(chosen: readonly number[]): boolean {
    return this.#caps.every((cap) => chosen.filter((i) => cap.members.includes(i)).length <= cap.most);
  }

  /**
   * The allowed set with the largest sum of weights that holds `forced`, which count even if they exceed a cap.
   * Members whose weight is not positive are left out; equal weights go by number.
   */
  heaviest(weights: ArrayLike<number>, forced: readonly number[] = []): CappedSet {
    const room = Float64Array.from(this.#most);
    let base = 0;
    for (const i of forced) {
      base += weights[i] ?? 0;
      for (const c of this.#over[i] ?? []) room[c] = (room[c] ?? 0) - 1;
    }
    const order = this.#ordered(weights, forced);
    const greedy = this.#greedy(order, weights, room, false);
    const found = this.exact
      ? { ...greedy, upperBound: greedy.value }
      : this.#search(order, weights, room, greedy);
    return {
      chosen: [...forced, ...found.chosen].sort((a, b) => a - b),
      value: base + found.value,
      upperBound: base + found.upperBound,
    };
  }

  /** Members of positive weight that are not forced, heaviest first, equal ones by number. */
  #ordered(weights: ArrayLike<number>, forced: readonly number[]): readonly number[] {
    const order: number[] = [];
    for (let i = 0; i < this.#count; i++) {
      const w = weights[i] ?? 0;
      if (!(w > 0) || forced.includes(i)) continue;
      let at = order.length;
      for (; at > 0 && (weights[order[at - 1] ?? 0] ?? 0) < w; at--) order[at] = order[at - 1] ?? 0;
      order[at] = i;
    }
    return order;
  }

  /** @param relaxed keeps only the nested part of the caps, which gives an upper bound */
  #greedy(
    order: readonly number[],
    weights: ArrayLike<number>,
    room: Float64Array,
    relaxed: boolean,
    from = 0,
  ): { readonly chosen: readonly number[]; readonly value: number } {
    const left = room.slice();
    const chosen: number[] = [];
    let value = 0;
    for (let k = from; k < order.length; k++) {
      const i = order[k] ?? 0;
      const over = this.#over[i] ?? [];
      let fits = true;
      for (const c of over) fits &&= (left[c] ?? 0) > 0 || (relaxed && this.#nested[c] === 0);
      if (!fits) continue;
      for (const c of over) left[c] = (left[c] ?? 0) - 1;
      chosen.push(i);
      value += weights[i] ?? 0;
    }
    return { chosen, value };
  }

  #search(
    order: readonly number[],
    weights: ArrayLike<number>,
    room: Float64Array,
    start: { readonly chosen: readonly number[]; readonly value: number },
  ): CappedSet {
    let best = start;
    let nodes = 0;
    let open = Number.NEGATIVE_INFINITY;
    const taken: number[] = [];
    const visit = (k: number, value: number): void => {
      const bound = value + this.#greedy(order, weights, room, true, k).value;
      if (bound <= best.value + 1e-12 * Math.abs(best.value)) return;
      if (nodes++ >= NODE_LIMIT) {
        open = Math.max(open, bound);
        return;
      }
      if (k === order.length) {
        best = { chosen: [...taken], value };
        return;
      }
      const i = order[k] ?? 0;
      const over = this.#over[i] ?? [];
      if (over.every((c) => (room[c] ?? 0) > 0)) {
        for (const c of over) room[c] = (room[c] ?? 0) - 1;
        taken.push(i);
        visit(k + 1, value + (weights[i] ?? 0));
        taken.pop();
        for (const c of over) room[c] = (room[c] ?? 0) + 1;
      }
      visit(k + 1, value);
    };
    visit(0, 0);
    return { chosen: best.chosen, value: best.value, upperBound: Math.max(best.value, open) };
  }
}

/** 1 for each cap of a family in which any two are nested or disjoint: the smaller caps are kept first. */
function nestedPart(caps: readonly Cap[]): Uint8Array {
  const kept = new Uint8Array(caps.length);
  const sets = caps.map((cap) => new Set(cap.members));
  const bySize = sets.map((_, c) => c).sort((a, b) => (sets[a]?.size ?? 0) - (sets[b]?.size ?? 0) || a - b);
  const fits = (a: ReadonlySet<number>, b: ReadonlySet<number>): boolean => {
    const shared = [...a].filter((i) => b.has(i)).length;
    return shared === 0 || shared === Math.min(a.size, b.size);
  };
  for (const c of bySize) {
    const own = sets[c] ?? new Set<number>();
    if (bySize.every((d) => kept[d] === 0 || fits(own, sets[d] ?? new Set()))) kept[c] = 1;
  }
  return kept;
}
