import type { SteinerProblem } from "./tree.ts";

/**
 * One pass of node insertion: a node outside the tree joins it when the cheapest tree over all nodes so far and this
 * one is cheaper. That tree consists of old tree edges and edges of the new node. Returns the better tree, or the
 * same array when no node helps.
 */
export const insertNodes = (problem: SteinerProblem, start: number[]): number[] => {
  const { graph, rank } = problem;
  const inside = new Uint8Array(graph.nodes);
  const mark = (edges: readonly number[], value: number): void => {
    for (const e of edges) {
      inside[graph.a[e] ?? 0] = value;
      inside[graph.b[e] ?? 0] = value;
    }
  };
  let tree = start;
  let cost = problem.costOf(tree);
  mark(tree, 1);
  for (let v = 0; v < graph.nodes; v++) {
    if (inside[v] === 1) continue;
    const spokes: number[] = [];
    const end = graph.first[v + 1] ?? 0;
    for (let k = graph.first[v] ?? 0; k < end; k++) {
      if (inside[graph.neighbour[k] ?? 0] === 1) spokes.push(graph.edge[k] ?? 0);
    }
    if (spokes.length < 2) continue;
    spokes.sort((x, y) => (rank[x] ?? 0) - (rank[y] ?? 0));
    const candidate = problem.spanningOf(merged(tree, spokes, rank));
    const found = problem.costOf(candidate);
    if (found >= cost - 1e-9 * cost) continue;
    mark(tree, 0);
    tree = candidate;
    cost = found;
    mark(tree, 1);
  }
  return tree;
};

const merged = (x: readonly number[], y: readonly number[], rank: Int32Array): number[] => {
  const out: number[] = [];
  let j = 0;
  for (const e of x) {
    for (let f = y[j]; f !== undefined && (rank[f] ?? 0) < (rank[e] ?? 0); f = y[++j]) out.push(f);
    out.push(e);
  }
  for (let f = y[j]; f !== undefined; f = y[++j]) out.push(f);
  return out;
};
