import { type Arc, PathFinder, strongParts } from "./digraph.ts";

/** Arcs without which a graph has no loop. */
export interface Feedback {
  /** Indices of the arcs, in ascending order. */
  readonly arcs: readonly number[];
  readonly weight: number;
  /** No such set weighs less. Equal to `weight` unless the search was cut short. */
  readonly lowerBound: number;
}

export interface FeedbackEffort {
  /** Arcs that may be looked at in each strongly connected part; beyond them the best set so far is given. */
  readonly visits: number;
}

const USUAL: FeedbackEffort = { visits: 2_000_000 };

/**
 * A set of arcs of least weight that meets every loop (the least-weight feedback arc set). Each strongly connected part
 * is searched by itself: every loop must lose one of its arcs, so there is a branch for each arc of one, in which those
 * tried before are kept. Loops that share no weight bound from below what is still to be paid.
 */
export function leastFeedback(nodes: number, arcs: readonly Arc[], effort: FeedbackEffort = USUAL): Feedback {
  const part = strongParts(nodes, arcs);
  const byPart = new Map<number, number[]>();
  arcs.forEach((arc, index) => {
    const own = part[arc.from] ?? -1;
    if (own !== part[arc.to]) return;
    const list = byPart.get(own) ?? [];
    list.push(index);
    byPart.set(own, list);
  });
  const all: number[] = [];
  let weight = 0;
  let lowerBound = 0;
  for (const indices of byPart.values()) {
    const found = new PartSearch(
      indices.map((index) => arcs[index] ?? NO_ARC),
      effort.visits,
    ).run();
    all.push(...found.arcs.map((index) => indices[index] ?? -1));
    weight += found.weight;
    lowerBound += found.lowerBound;
  }
  return { arcs: all.sort((a, b) => a - b), weight, lowerBound };
}

const NO_ARC: Arc = { from: 0, to: 0, weight: 1 };

/** Arcs that are gone, that must stay, and that may still go. */
const FREE = 0;
const GONE = 1;
const KEPT = 2;

interface Packed {
  /** Loops that share no weight: what each pays for is paid for it alone. */
  readonly loops: readonly (readonly number[])[];
  readonly bound: number;
  /** Arcs of which nothing is left; without them there is no loop. */
  readonly emptied: readonly number[];
  /** A loop is left of which every arc must stay. */
  readonly hopeless: boolean;
}

/** The search within one strongly connected part. */
class PartSearch {
  readonly #arcs: readonly Arc[];
  readonly #nodes: number;
  readonly #paths: PathFinder;
  readonly #state: Uint8Array;
  #left: number;
  #best: readonly number[] = [];
  #bestWeight = Number.POSITIVE_INFINITY;
  /** Least bound of what was cut off unsearched. */
  #cut = Number.POSITIVE_INFINITY;

  constructor(arcs: readonly Arc[], visits: number) {
    const names = new Map<number, number>();
    const nameOf = (node: number): number => {
      const known = names.get(node) ?? names.size;
      names.set(node, known);
      return known;
    };
    this.#arcs = arcs.map(({ from, to, weight }) => ({ from: nameOf(from), to: nameOf(to), weight }));
    this.#nodes = names.size;
    this.#paths = new PathFinder(this.#nodes, this.#arcs);
    this.#state = new Uint8Array(arcs.length);
    this.#left = visits;
  }

  run(): Feedback {
    this.#branch(0);
    return {
      arcs: this.#best,
      weight: this.#bestWeight,
      lowerBound: Math.min(this.#bestWeight, this.#cut),
    };
  }

  #branch(paid: number): void {
    const packed = this.#pack();
    if (packed.hopeless || paid + packed.bound >= this.#bestWeight) return;
    this.#offer(packed.emptied);
    if (packed.loops.length === 0 || paid + packed.bound >= this.#bestWeight) return;
    if (this.#left <= 0) {
      this.#cut = Math.min(this.#cut, paid + packed.bound);
      return;
    }
    const choices = this.#narrowest(packed.loops);
    for (const arc of choices) {
      this.#state[arc] = GONE;
      this.#branch(paid + this.#weight(arc));
      this.#state[arc] = KEPT;
    }
    for (const arc of choices) this.#state[arc] = FREE;
  }

  /** The arcs that may go of the loop that has the fewest of them, the lightest first. */
  #narrowest(loops: readonly (readonly number[])[]): readonly number[] {
    let best: readonly number[] | null = null;
    for (const loop of loops) {
      const free = loop.filter((arc) => this.#state[arc] === FREE);
      if (best === null || free.length < best.length) best = free;
    }
    return (best ?? []).toSorted((a, b) => this.#weight(a) - this.#weight(b) || a - b);
  }

  /** Takes what is gone already, with what was emptied, as a set if it is the lightest so far. */
  #offer(emptied: readonly number[]): void {
    const gone = [...this.#state.keys()].filter((arc) => this.#state[arc] === GONE);
    const set = this.#thinned([...gone, ...emptied]);
    const weight = set.reduce((sum, arc) => sum + this.#weight(arc), 0);
    if (weight >= this.#bestWeight) return;
    this.#best = set;
    this.#bestWeight = weight;
  }

  /**
   * Loops through one node after the other, each paid by the least that is left on one of its arcs; their sum is a
   * bound (local ratio, Bar-Yehuda and Even 1985). A node through which no loop is left is in none that comes later.
   */
  #pack(): Packed {
    const rest = this.#arcs.map((arc, i) =>
      this.#state[i] === KEPT ? Number.POSITIVE_INFINITY : arc.weight,
    );
    for (const [i, state] of this.#state.entries()) if (state === GONE) rest[i] = 0;
    const loops: (readonly number[])[] = [];
    const emptied: number[] = [];
    let bound = 0;
    const open = (arc: number): boolean => (rest[arc] ?? 0) > 0;
    for (const most of [2, Number.POSITIVE_INFINITY])
      for (let node = 0; node < this.#nodes; node++)
        for (;;) {
          const loop = this.#path(node, node, open, most);
          if (loop === null) break;
          const least = Math.min(...loop.map((arc) => rest[arc] ?? 0));
          if (least === Number.POSITIVE_INFINITY) return { loops, bound, emptied, hopeless: true };
          loops.push(loop);
          bound += least;
          for (const arc of loop) {
            const left = (rest[arc] ?? 0) - least;
            rest[arc] = left;
            if (left === 0) emptied.push(arc);
          }
        }
    return { loops, bound, emptied, hopeless: false };
  }

  /** A set without the arcs that it can do without, the heaviest put back first. */
  #thinned(set: readonly number[]): readonly number[] {
    const gone = new Set(set);
    for (const arc of [...gone].sort((a, b) => this.#weight(b) - this.#weight(a) || a - b)) {
      const { from, to } = this.#arcs[arc] ?? NO_ARC;
      if (this.#path(to, from, (other) => !gone.has(other)) === null) gone.delete(arc);
    }
    return [...gone].sort((a, b) => a - b);
  }

  #path(from: number, to: number, open: (arc: number) => boolean, most?: number): readonly number[] | null {
    this.#left -= this.#arcs.length;
    return this.#paths.path(from, to, open, most);
  }

  #weight(arc: number): number {
    return this.#arcs[arc]?.weight ?? 0;
  }
}
