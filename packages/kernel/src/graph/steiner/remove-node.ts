import { otherEnd } from "../dijkstra.ts";
import { IndexHeap } from "../heap.ts";
import { UnionFind } from "../union-find.ts";
import { type RootedTree, rootedTree, type SteinerProblem } from "./tree.ts";

/**
 * One pass of key-node elimination: a node that is no terminal and where three or more branches meet is taken out
 * with the paths to the next key nodes, and the parts are joined again as cheaply as a spanning tree over shortest
 * paths between them allows, when that is cheaper (E. Uchoa, R. F. Werneck, ACM J. Exp. Algorithmics 17 (2012)).
 */
export const removeNodes = (problem: SteinerProblem, start: number[]): number[] => {
  const { graph, isTerminal } = problem;
  const { cost } = graph;
  const parts = new PartFinder(problem);
  let tree = start;
  let view: RootedTree = rootedTree(problem, tree);
  const isKey = (v: number): boolean => isTerminal[v] === 1 || (view.degree[v] ?? 0) >= 3;
  for (const v of view.order.slice()) {
    if ((view.place[v] ?? -1) < 0 || isTerminal[v] === 1 || (view.degree[v] ?? 0) < 3) continue;
    const taken = new Set<number>();
    let length = 0;
    const take = (e: number): void => {
      taken.add(e);
      length += cost[e] ?? 0;
    };
    parts.label.fill(-1);
    for (const u of view.order) parts.label[u] = 0;
    parts.label[v] = -1;
    for (let u = v; ; ) {
      take(view.parentEdge[u] ?? 0);
      u = view.parent[u] ?? 0;
      if (isKey(u)) break;
      parts.label[u] = -1;
    }
    let count = 1;
    const from = view.place[v] ?? 0;
    const to = from + (view.size[v] ?? 0);
    for (let i = from + 1; i < to; ) {
      const u = view.order[i] ?? 0;
      take(view.parentEdge[u] ?? 0);
      if (!isKey(u)) {
        parts.label[u] = -1;
        i++;
        continue;
      }
      const next = i + (view.size[u] ?? 0);
      for (; i < next; i++) parts.label[view.order[i] ?? 0] = count;
      count++;
    }
    const links = parts.join(view.order, count, length * (1 - 1e-9));
    if (links === null) continue;
    tree = problem.spanningOf(problem.sorted([...tree.filter((e) => !taken.has(e)), ...links]));
    view = rootedTree(problem, tree);
  }
  return tree;
};

/** Finds the cheapest paths that join labelled parts of a tree. */
class PartFinder {
  /** Part of each node; −1 for none. */
  readonly label: Int32Array;
  private readonly problem: SteinerProblem;
  private readonly heap: IndexHeap;
  private readonly distance: Float64Array;
  private readonly parentEdge: Int32Array;
  private readonly region: Int32Array;

  constructor(problem: SteinerProblem) {
    const n = problem.graph.nodes;
    this.problem = problem;
    this.label = new Int32Array(n);
    this.heap = new IndexHeap(n);
    this.distance = new Float64Array(n);
    this.parentEdge = new Int32Array(n);
    this.region = new Int32Array(n);
  }

  /** Edges of paths that join parts 0 … count−1 for less than `limit` in all, or null. */
  join(nodes: Int32Array, count: number, limit: number): number[] | null {
    const { heap, distance, parentEdge, region, label } = this;
    const { graph } = this.problem;
    const { first, neighbour, edge, cost } = graph;
    distance.fill(Number.POSITIVE_INFINITY);
    region.fill(-1);
    heap.clear();
    for (const u of nodes) {
      const part = label[u] ?? -1;
      if (part < 0) continue;
      distance[u] = 0;
      parentEdge[u] = -1;
      region[u] = part;
    }
    const bridges: { readonly e: number; readonly length: number }[] = [];
    const look = (u: number): void => {
      const du = distance[u] ?? 0;
      const end = first[u + 1] ?? 0;
      for (let k = first[u] ?? 0; k < end; k++) {
        const w = neighbour[k] ?? 0;
        const e = edge[k] ?? 0;
        const d = du + (cost[e] ?? 0);
        const dw = distance[w] ?? 0;
        if (d < dw) {
          // A link crosses from part to part at its middle, so neither end needs more than half of it.
          if (d > limit / 2) continue;
          distance[w] = d;
          parentEdge[w] = e;
          region[w] = region[u] ?? -1;
          heap.set(w, d);
        } else if (region[w] !== region[u] && d + dw < limit) {
          bridges.push({ e, length: d + dw });
        }
      }
    };
    for (const u of nodes) if ((label[u] ?? -1) >= 0) look(u);
    for (let u = heap.pop(); u >= 0; u = heap.pop()) look(u);
    bridges.sort((x, y) => x.length - y.length || x.e - y.e);
    const sets = new UnionFind(count);
    const links: number[] = [];
    let total = 0;
    let open = count - 1;
    for (const { e, length } of bridges) {
      const a = graph.a[e] ?? 0;
      const b = graph.b[e] ?? 0;
      if (!sets.join(region[a] ?? 0, region[b] ?? 0)) continue;
      total += length;
      if (total >= limit) return null;
      links.push(e);
      for (const end of [a, b]) {
        for (let w = end, f = parentEdge[w] ?? -1; f >= 0; f = parentEdge[w] ?? -1) {
          links.push(f);
          w = otherEnd(graph, f, w);
        }
      }
      open--;
      if (open === 0) return links;
    }
    return null;
  }
}
