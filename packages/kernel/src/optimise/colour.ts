import { assign } from "./assign.ts";

/** A colour that a vertex may have, and what that costs. */
export interface AllowedColour {
  readonly colour: number;
  readonly cost: number;
}

/** What is to be coloured. */
export interface ColouringProblem {
  /** For each vertex the colours that it may have. */
  readonly allowed: readonly (readonly AllowedColour[])[];
  /** Pairs of vertices that must differ. */
  readonly conflicts: readonly (readonly [number, number])[];
}

export interface Colouring {
  /** Colour of each vertex; null where none was left. */
  readonly colours: readonly (number | null)[];
  /** Cost of the colours given. */
  readonly value: number;
  /** When every vertex has a colour: no colouring costs less. */
  readonly lowerBound: number;
  /** Vertices without a colour, in ascending order. */
  readonly uncoloured: readonly number[];
  /** Vertices that all conflict with each other, the largest such set that was found: it needs as many colours. */
  readonly clique: readonly number[];
}

/**
 * Colours vertices so that conflicting ones differ, cheaply: the vertex with the fewest colours left goes first
 * (D. Brélaz, Comm. ACM 22 (1979) 251–256: DSATUR), then single changes, exchanges along two-coloured chains
 * (A. B. Kempe 1879) and freeing of blocked vertices improve it, at most `passes` times over. As many vertices as it
 * can are coloured; cost comes second. The bound adds up cheapest assignments over cliques that share no vertex.
 * @throws RangeError for a conflict with a vertex out of range or with itself, and for a cost that is not finite.
 */
export const colourGraph = (problem: ColouringProblem, passes = 20): Colouring => {
  const board = new ColourBoard(problem);
  board.fill();
  for (let pass = 0; pass < passes; pass++) {
    const freed = board.freeBlocked();
    if (!board.improve() && !freed) break;
  }
  const cliques = board.cliques();
  let lowerBound = 0;
  let clique: readonly number[] = [];
  for (const members of cliques) {
    lowerBound += board.cliqueCost(members);
    if (members.length > clique.length) clique = members;
  }
  return {
    colours: board.colour.map((c) => c ?? null),
    value: board.value(),
    lowerBound,
    uncoloured: board.colour.flatMap((c, v) => (c === undefined ? [v] : [])),
    clique,
  };
};

class ColourBoard {
  readonly colour: (number | undefined)[];
  private readonly costs: readonly ReadonlyMap<number, number>[];
  private readonly next: readonly (readonly number[])[];

  constructor({ allowed, conflicts }: ColouringProblem) {
    const n = allowed.length;
    this.colour = new Array<number | undefined>(n).fill(undefined);
    this.costs = allowed.map((list, v) => {
      for (const { cost } of list) {
        if (!Number.isFinite(cost))
          throw new RangeError(`a colour of vertex ${v} costs ${cost}, expected a number`);
      }
      return new Map(
        list.toSorted((a, b) => a.cost - b.cost || a.colour - b.colour).map((c) => [c.colour, c.cost]),
      );
    });
    const next: Set<number>[] = allowed.map(() => new Set());
    for (const [a, b] of conflicts) {
      const x = next[a];
      const y = next[b];
      if (x === undefined || y === undefined || a === b) {
        throw new RangeError(`conflict of ${a} with ${b}, expected two of the vertices 0 to ${n - 1}`);
      }
      x.add(b);
      y.add(a);
    }
    this.next = next.map((s) => [...s].sort((a, b) => a - b));
  }

  value(): number {
    let sum = 0;
    this.colour.forEach((c, v) => {
      if (c !== undefined) sum += this.cost(v, c);
    });
    return sum;
  }

  /** Colours every vertex that still can be, the one with the fewest colours left first, in its cheapest. */
  fill(): void {
    const open = new Set(this.colour.flatMap((c, v) => (c === undefined ? [v] : [])));
    while (open.size > 0) {
      let pick = -1;
      let fewest = Number.POSITIVE_INFINITY;
      for (const v of open) {
        const left = this.free(v).length;
        if (left < fewest || (left === fewest && this.neighbours(v).length > this.neighbours(pick).length)) {
          fewest = left;
          pick = v;
        }
      }
      open.delete(pick);
      this.colour[pick] = this.free(pick)[0];
    }
  }

  /** Gives a colour to vertices that have none, by moving the neighbours that hold it elsewhere. True if one could. */
  freeBlocked(): boolean {
    let any = false;
    for (let v = 0; v < this.colour.length; v++) {
      if (this.colour[v] !== undefined) continue;
      for (const c of this.colours(v)) {
        const holders = this.neighbours(v).filter((u) => this.colour[u] === c);
        const before = holders.map((u) => this.colour[u]);
        const moved = holders.every((u) => {
          this.colour[v] = c;
          const to = this.free(u).find((x) => x !== c);
          if (to !== undefined) this.colour[u] = to;
          return to !== undefined;
        });
        if (moved) {
          this.colour[v] = c;
          any = true;
          break;
        }
        this.colour[v] = undefined;
        holders.forEach((u, i) => {
          this.colour[u] = before[i];
        });
      }
    }
    return any;
  }

  /** Cheaper colours for single vertices and along chains of two colours. True when something got cheaper. */
  improve(): boolean {
    let better = false;
    for (let v = 0; v < this.colour.length; v++) {
      const own = this.colour[v];
      if (own === undefined) continue;
      for (const c of this.colours(v)) {
        if (this.cost(v, c) >= this.cost(v, own)) break;
        const chain = this.chain(v, own, c);
        if (chain === null) continue;
        const gain = chain.reduce((sum, u) => {
          const from = this.colour[u] === own ? own : c;
          return sum + this.cost(u, from) - this.cost(u, from === own ? c : own);
        }, 0);
        if (!(gain > 1e-9)) continue;
        for (const u of chain) this.colour[u] = this.colour[u] === own ? c : own;
        better = true;
        break;
      }
    }
    return better;
  }

  /** Disjoint cliques that cover all vertices, grown from the vertices with most conflicts. */
  cliques(): readonly (readonly number[])[] {
    const sets = this.next.map((list) => new Set(list));
    const order = this.next.map((_, v) => v);
    order.sort((a, b) => this.neighbours(b).length - this.neighbours(a).length || a - b);
    const used = new Set<number>();
    const cliques: number[][] = [];
    for (const v of order) {
      if (used.has(v)) continue;
      const clique = [v];
      for (const u of order) {
        if (u !== v && !used.has(u) && clique.every((w) => sets[u]?.has(w) === true)) clique.push(u);
      }
      for (const u of clique) used.add(u);
      cliques.push(clique);
    }
    return cliques;
  }

  /** Least cost of different colours for vertices that all conflict; 0 when there are not enough colours. */
  cliqueCost(members: readonly number[]): number {
    const palette = [...new Set(members.flatMap((v) => this.colours(v)))].sort((a, b) => a - b);
    const table = members.map((v) => palette.map((c) => this.cost(v, c)));
    return assign(table)?.value ?? 0;
  }

  /** Vertices that have to change when `v` goes from colour a to b; null when one of them may not. */
  private chain(v: number, a: number, b: number): readonly number[] | null {
    const chain = [v];
    const seen = new Set(chain);
    for (const u of chain) {
      const to = this.colour[u] === a ? b : a;
      if (!this.costs[u]?.has(to)) return null;
      for (const w of this.neighbours(u)) {
        if (this.colour[w] !== to || seen.has(w)) continue;
        seen.add(w);
        chain.push(w);
      }
    }
    return chain;
  }

  private colours(v: number): readonly number[] {
    return [...(this.costs[v]?.keys() ?? [])];
  }

  private cost(v: number, c: number): number {
    return this.costs[v]?.get(c) ?? Number.POSITIVE_INFINITY;
  }

  private neighbours(v: number): readonly number[] {
    return this.next[v] ?? [];
  }

  /** Colours that a vertex may have and no neighbour has, cheapest first. */
  private free(v: number): readonly number[] {
    const taken = new Set(this.neighbours(v).map((u) => this.colour[u]));
    return this.colours(v).filter((c) => !taken.has(c));
  }
}
