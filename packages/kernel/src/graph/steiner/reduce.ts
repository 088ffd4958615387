import { type Graph, layOut } from "../graph.ts";
import { IndexHeap } from "../heap.ts";
import { steinerLowerBound } from "./dual-ascent.ts";

/**
 * Which edges may still be part of a tree that costs less than `below`: arc (u, v) may when the bound, the reduced
 * cost from the root to u, its own, and that from v to the nearest terminal stay under it (C. W. Duin 1993). Marks
 * the others as dead in `alive` and returns the bound.
 */
export const fixByReducedCost = (
  graph: Graph,
  terminals: readonly number[],
  root: number,
  below: number,
  alive: Uint8Array,
): number => {
  const { bound, reduced } = steinerLowerBound(graph, terminals, root);
  if (bound >= below) return bound;
  const fromRoot = arcDistances(graph, reduced, [root], 0);
  const toTerminal = arcDistances(
    graph,
    reduced,
    terminals.filter((t) => t !== root),
    1,
  );
  for (let e = 0; e < graph.edges; e++) {
    const u = graph.a[e] ?? 0;
    const v = graph.b[e] ?? 0;
    const there = (fromRoot[u] ?? 0) + (reduced[2 * e] ?? 0) + (toTerminal[v] ?? 0);
    const back = (fromRoot[v] ?? 0) + (reduced[2 * e + 1] ?? 0) + (toTerminal[u] ?? 0);
    if (bound + Math.min(there, back) >= below) alive[e] = 0;
  }
  return bound;
};

/** Distances along arcs (`against` 0) or against them (1) from the nearest source, by reduced costs. */
const arcDistances = (
  graph: Graph,
  reduced: Float64Array,
  sources: readonly number[],
  against: 0 | 1,
): Float64Array => {
  const distance = new Float64Array(graph.nodes).fill(Number.POSITIVE_INFINITY);
  const heap = new IndexHeap(graph.nodes);
  for (const s of sources) {
    distance[s] = 0;
    heap.set(s, 0);
  }
  for (let u = heap.pop(); u >= 0; u = heap.pop()) {
    const du = distance[u] ?? 0;
    const end = graph.first[u + 1] ?? 0;
    for (let k = graph.first[u] ?? 0; k < end; k++) {
      const v = graph.neighbour[k] ?? 0;
      const e = graph.edge[k] ?? 0;
      const out = (graph.a[e] ?? 0) === u ? 0 : 1;
      const d = du + (reduced[2 * e + (out ^ against)] ?? 0);
      if (d < (distance[v] ?? 0)) {
        distance[v] = d;
        heap.set(v, d);
      }
    }
  }
  return distance;
};

/** A graph without some edges and without the nodes that thereby stand alone. */
export interface Remainder {
  readonly graph: Graph;
  readonly terminals: readonly number[];
  /** Edge number in the graph that it was made from. */
  readonly edgeOf: Int32Array;
}

export const remainder = (graph: Graph, terminals: readonly number[], alive: Uint8Array): Remainder => {
  const number = new Int32Array(graph.nodes).fill(-1);
  let nodes = 0;
  const keep = (v: number): number => {
    const known = number[v] ?? -1;
    if (known >= 0) return known;
    number[v] = nodes;
    return nodes++;
  };
  const newTerminals = terminals.map(keep);
  const edgeOf = Int32Array.from({ length: graph.edges }, (_, e) => e).filter((e) => alive[e] === 1);
  const a = new Int32Array(edgeOf.length);
  const b = new Int32Array(edgeOf.length);
  const cost = new Float64Array(edgeOf.length);
  edgeOf.forEach((e, i) => {
    a[i] = keep(graph.a[e] ?? 0);
    b[i] = keep(graph.b[e] ?? 0);
    cost[i] = graph.cost[e] ?? 0;
  });
  return { graph: layOut(nodes, a, b, cost), terminals: newTerminals, edgeOf };
};
