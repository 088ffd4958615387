/** An arc of a directed graph on nodes 0, 1, 2 … */
export interface Arc {
  readonly from: number;
  readonly to: number;
  /** A whole number above 0. */
  readonly weight: number;
}

/** Indices of the arcs that leave each node. */
export function leaving(nodes: number, arcs: readonly Arc[]): readonly (readonly number[])[] {
  const out: number[][] = Array.from({ length: nodes }, () => []);
  arcs.forEach(({ from }, index) => {
    out[from]?.push(index);
  });
  return out;
}

/**
 * The strongly connected part of each node, numbered so that no arc leads to a higher number (Tarjan 1972, without
 * recursion).
 */
export function strongParts(nodes: number, arcs: readonly Arc[]): readonly number[] {
  const out = leaving(nodes, arcs);
  const part = new Array<number>(nodes).fill(-1);
  const low = new Array<number>(nodes).fill(-1);
  const found = new Array<number>(nodes).fill(-1);
  const next = new Array<number>(nodes).fill(0);
  const stack: number[] = [];
  let count = 0;
  let parts = 0;
  const enter = (node: number): void => {
    found[node] = count;
    low[node] = count++;
    stack.push(node);
  };
  for (let root = 0; root < nodes; root++) {
    if (found[root] !== -1) continue;
    const path = [root];
    enter(root);
    while (path.length > 0) {
      const node = path[path.length - 1] ?? 0;
      const at = next[node] ?? 0;
      next[node] = at + 1;
      const arc = arcs[out[node]?.[at] ?? -1];
      if (arc !== undefined) {
        if (found[arc.to] === -1) {
          enter(arc.to);
          path.push(arc.to);
        } else if (part[arc.to] === -1) low[node] = Math.min(low[node] ?? 0, found[arc.to] ?? 0);
        continue;
      }
      path.pop();
      const above = path[path.length - 1];
      if (above !== undefined) low[above] = Math.min(low[above] ?? 0, low[node] ?? 0);
      if (low[node] !== found[node]) continue;
      let member = -1;
      while (member !== node) {
        member = stack.pop() ?? node;
        part[member] = parts;
      }
      parts++;
    }
  }
  return part;
}

/** Shortest paths in one directed graph, asked again and again with some of its arcs closed. */
export class PathFinder {
  readonly #arcs: readonly Arc[];
  readonly #out: readonly (readonly number[])[];
  /** Arc by which each node was reached, in the round in which it was. */
  readonly #by: Int32Array;
  readonly #round: Int32Array;
  #now = 0;

  constructor(nodes: number, arcs: readonly Arc[]) {
    this.#arcs = arcs;
    this.#out = leaving(nodes, arcs);
    this.#by = new Int32Array(nodes);
    this.#round = new Int32Array(nodes);
  }

  /**
   * The path of fewest arcs from one node to another, at least one arc long, as indices of arcs; null when there is
   * none of at most `most` arcs. Of paths as short the one that is met first.
   */
  path(
    from: number,
    to: number,
    open: (arc: number) => boolean,
    most = Number.POSITIVE_INFINITY,
  ): readonly number[] | null {
    this.#now++;
    let layer = [from];
    for (let length = 1; layer.length > 0 && length <= most; length++) {
      const further: number[] = [];
      for (const node of layer)
        for (const index of this.#out[node] ?? []) {
          const next = this.#arcs[index]?.to ?? 0;
          if (this.#round[next] === this.#now || !open(index)) continue;
          this.#round[next] = this.#now;
          this.#by[next] = index;
          if (next === to) return this.#back(to, from);
          further.push(next);
        }
      layer = further;
    }
    return null;
  }

  #back(to: number, from: number): readonly number[] {
    const path: number[] = [];
    let node = to;
    do {
      const index = this.#by[node] ?? -1;
      path.push(index);
      node = this.#arcs[index]?.from ?? from;
    } while (node !== from);
    return path.reverse();
  }
}
