import { otherEnd } from "../dijkstra.ts";
import { IndexHeap } from "../heap.ts";
import type { SteinerProblem } from "./tree.ts";

/**
 * Shortest-path heuristic (H. Takahashi, A. Matsuyama, Math. Japonica 24 (1980) 573–577): from a root, the terminal
 * nearest to the tree is joined to it until none is left. Then the cheapest tree over its nodes, pruned.
 * @param costs costs that the paths are found by; the final tree goes by the graph's own
 */
export const growTree = (problem: SteinerProblem, root: number, costs: Float64Array): number[] => {
  const { graph, isTerminal } = problem;
  const { first, neighbour, edge } = graph;
  const distance = new Float64Array(graph.nodes).fill(Number.POSITIVE_INFINITY);
  const parentEdge = new Int32Array(graph.nodes).fill(-1);
  const inTree = new Uint8Array(graph.nodes);
  const heap = new IndexHeap(graph.nodes);
  distance[root] = 0;
  inTree[root] = 1;
  heap.set(root, 0);
  let left = problem.terminals.length - (isTerminal[root] ?? 0);
  while (left > 0) {
    const u = heap.pop();
    if (u < 0) break;
    if (isTerminal[u] === 1 && inTree[u] === 0) {
      left--;
      for (let v = u; inTree[v] === 0; v = otherEnd(graph, parentEdge[v] ?? 0, v)) {
        inTree[v] = 1;
        distance[v] = 0;
        heap.set(v, 0);
      }
      continue;
    }
    const du = distance[u] ?? 0;
    const end = first[u + 1] ?? 0;
    for (let k = first[u] ?? 0; k < end; k++) {
      const v = neighbour[k] ?? 0;
      const e = edge[k] ?? 0;
      const d = du + (costs[e] ?? 0);
      if (d < (distance[v] ?? 0)) {
        distance[v] = d;
        parentEdge[v] = e;
        heap.set(v, d);
      }
    }
  }
  return problem.spanning(inTree);
};
