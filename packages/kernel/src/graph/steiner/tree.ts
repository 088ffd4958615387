import { otherEnd } from "../dijkstra.ts";
import type { Graph } from "../graph.ts";
import { edgesByCost } from "../spanning.ts";
import { UnionFind } from "../union-find.ts";

/** A graph with the nodes to be joined, and room to work in. */
export class SteinerProblem {
  readonly graph: Graph;
  readonly terminals: readonly number[];
  readonly isTerminal: Uint8Array;
  /** Rank of an edge by cost, then by number. */
  readonly rank: Int32Array;
  private readonly byCost: Int32Array;
  private readonly sets: UnionFind;
  private readonly degree: Int32Array;

  constructor(graph: Graph, terminals: readonly number[]) {
    this.graph = graph;
    this.terminals = terminals;
    this.isTerminal = new Uint8Array(graph.nodes);
    for (const t of terminals) this.isTerminal[t] = 1;
    this.byCost = edgesByCost(graph);
    this.rank = new Int32Array(graph.edges);
    this.byCost.forEach((e, i) => {
      this.rank[e] = i;
    });
    this.sets = new UnionFind(graph.nodes);
    this.degree = new Int32Array(graph.nodes);
  }

  costOf(edges: readonly number[]): number {
    let sum = 0;
    for (const e of edges) sum += this.graph.cost[e] ?? 0;
    return sum;
  }

  /** Cheapest tree over the marked nodes, without leaves that are no terminals; edges by rank. */
  spanning(marked: Uint8Array): number[] {
    const { a, b } = this.graph;
    this.sets.reset();
    const edges: number[] = [];
    for (const e of this.byCost) {
      const u = a[e] ?? 0;
      const v = b[e] ?? 0;
      if (marked[u] === 1 && marked[v] === 1 && this.sets.join(u, v)) edges.push(e);
    }
    return this.pruned(edges);
  }

  /** Cheapest tree among the given edges, which are sorted by rank, without leaves that are no terminals. */
  spanningOf(edges: readonly number[]): number[] {
    const { a, b } = this.graph;
    this.sets.reset();
    return this.pruned(edges.filter((e) => this.sets.join(a[e] ?? 0, b[e] ?? 0)));
  }

  /** The given edges in order of cost, each once. */
  sorted(edges: Iterable<number>): number[] {
    return [...new Set(edges)].sort((x, y) => (this.rank[x] ?? 0) - (this.rank[y] ?? 0));
  }

  /** A tree without its branches that lead to no terminal. */
  private pruned(edges: number[]): number[] {
    const { graph, degree, isTerminal } = this;
    const { a, b } = graph;
    let kept = edges;
    for (;;) {
      for (const e of kept) {
        degree[a[e] ?? 0] = 0;
        degree[b[e] ?? 0] = 0;
      }
      for (const e of kept) {
        const u = a[e] ?? 0;
        const v = b[e] ?? 0;
        degree[u] = (degree[u] ?? 0) + 1;
        degree[v] = (degree[v] ?? 0) + 1;
      }
      const bare = (v: number): boolean => degree[v] === 1 && isTerminal[v] === 0;
      const next = kept.filter((e) => !bare(a[e] ?? 0) && !bare(b[e] ?? 0));
      if (next.length === kept.length) return kept;
      kept = next;
    }
  }
}

/** A tree seen from one of its terminals. */
export interface RootedTree {
  /** Its nodes, each before those that hang on it; what hangs on a node stands directly behind it. */
  readonly order: Int32Array;
  /** Place in `order`; −1 outside the tree. */
  readonly place: Int32Array;
  /** Number of nodes that hang on a node, itself included, by node. */
  readonly size: Int32Array;
  readonly parent: Int32Array;
  readonly parentEdge: Int32Array;
  readonly degree: Int32Array;
}

export const rootedTree = (problem: SteinerProblem, edges: readonly number[]): RootedTree => {
  const { graph, terminals } = problem;
  const n = graph.nodes;
  const root = terminals[0] ?? 0;
  const degree = new Int32Array(n);
  const next = new Int32Array(2 * edges.length).fill(-1);
  const head = new Int32Array(n).fill(-1);
  edges.forEach((e, i) => {
    const u = graph.a[e] ?? 0;
    const v = graph.b[e] ?? 0;
    next[2 * i] = head[u] ?? -1;
    head[u] = 2 * i;
    next[2 * i + 1] = head[v] ?? -1;
    head[v] = 2 * i + 1;
    degree[u] = (degree[u] ?? 0) + 1;
    degree[v] = (degree[v] ?? 0) + 1;
  });
  const order = new Int32Array(edges.length + 1);
  const place = new Int32Array(n).fill(-1);
  const size = new Int32Array(n);
  const parent = new Int32Array(n).fill(-1);
  const parentEdge = new Int32Array(n).fill(-1);
  const stack = [root];
  let count = 0;
  for (let v = stack.pop(); v !== undefined; v = stack.pop()) {
    order[count] = v;
    place[v] = count++;
    size[v] = 1;
    for (let k = head[v] ?? -1; k >= 0; k = next[k] ?? -1) {
      const e = edges[k >> 1] ?? 0;
      if (e === parentEdge[v]) continue;
      const w = otherEnd(graph, e, v);
      parent[w] = v;
      parentEdge[w] = e;
      stack.push(w);
    }
  }
  for (let i = count - 1; i > 0; i--) {
    const v = order[i] ?? 0;
    const p = parent[v] ?? 0;
    size[p] = (size[p] ?? 0) + (size[v] ?? 0);
  }
  return { order, place, size, parent, parentEdge, degree };
};
