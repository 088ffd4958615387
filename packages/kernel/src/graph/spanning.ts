import type { Graph } from "./graph.ts";
import { UnionFind } from "./union-find.ts";

/** Edge numbers by cost, then by number. */
export const edgesByCost = (graph: Graph): Int32Array =>
  Int32Array.from({ length: graph.edges }, (_, e) => e).sort(
    (x, y) => (graph.cost[x] ?? 0) - (graph.cost[y] ?? 0) || x - y,
  );

/** A minimum spanning tree (of each component), as edge numbers by cost (Kruskal 1956). */
export const minimumSpanningTree = (graph: Graph): readonly number[] => {
  const sets = new UnionFind(graph.nodes);
  const tree: number[] = [];
  for (const e of edgesByCost(graph)) if (sets.join(graph.a[e] ?? 0, graph.b[e] ?? 0)) tree.push(e);
  return tree;
};

/** For each node the number of its component, counting from 0 in the order of their first nodes. */
export const connectedComponents = (graph: Graph): { readonly count: number; readonly of: Int32Array } => {
  const of = new Int32Array(graph.nodes).fill(-1);
  let count = 0;
  for (let start = 0; start < graph.nodes; start++) {
    if (of[start] !== -1) continue;
    of[start] = count;
    const stack = [start];
    for (let u = stack.pop(); u !== undefined; u = stack.pop()) {
      const end = graph.first[u + 1] ?? 0;
      for (let k = graph.first[u] ?? 0; k < end; k++) {
        const v = graph.neighbour[k] ?? 0;
        if (of[v] !== -1) continue;
        of[v] = count;
        stack.push(v);
      }
    }
    count++;
  }
  return { count, of };
};
