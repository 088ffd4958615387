import type { Graph } from "./graph.ts";
import { IndexHeap } from "./heap.ts";

/** Shortest paths from a set of sources. */
export interface ShortestPaths {
  /** Distance from the nearest source; Infinity where no path leads. */
  readonly distance: Float64Array;
  /** Last edge on the way to each node; −1 at sources and where no path leads. */
  readonly parentEdge: Int32Array;
}

/**
 * Shortest paths from the nearest of several sources (Dijkstra 1959). Of equally long paths always the same is taken.
 * @param costs costs to use instead of the graph's own, by edge
 */
export const shortestPaths = (
  graph: Graph,
  sources: Iterable<number>,
  costs: Float64Array = graph.cost,
): ShortestPaths => {
  const distance = new Float64Array(graph.nodes).fill(Number.POSITIVE_INFINITY);
  const parentEdge = new Int32Array(graph.nodes).fill(-1);
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
      const d = du + (costs[e] ?? 0);
      if (d < (distance[v] ?? 0)) {
        distance[v] = d;
        parentEdge[v] = e;
        heap.set(v, d);
      }
    }
  }
  return { distance, parentEdge };
};

/** The other end of an edge. */
export const otherEnd = (graph: Graph, e: number, v: number): number => {
  const a = graph.a[e] ?? 0;
  return a === v ? (graph.b[e] ?? 0) : a;
};

/** Edges of the found path to a node, from its source on; null when no path leads there. */
export const pathTo = (graph: Graph, paths: ShortestPaths, node: number): readonly number[] | null => {
  if ((paths.distance[node] ?? Number.POSITIVE_INFINITY) === Number.POSITIVE_INFINITY) return null;
  const edges: number[] = [];
  let v = node;
  for (let e = paths.parentEdge[v] ?? -1; e >= 0; e = paths.parentEdge[v] ?? -1) {
    edges.push(e);
    v = otherEnd(graph, e, v);
  }
  return edges.reverse();
};
