import { otherEnd } from "../dijkstra.ts";
import { IndexHeap } from "../heap.ts";
import { type RootedTree, rootedTree, type SteinerProblem } from "./tree.ts";

/**
 * One pass of key-path exchange (M. G. A. Verhoeven, M. E. M. Severens, E. H. L. Aarts 1996; E. Uchoa, R. F. Werneck
 * 2012): a path between two key nodes (terminals, or nodes where three branches meet) is taken out and the two parts
 * are joined by the shortest path between them, when that is cheaper.
 */
export const exchangePaths = (problem: SteinerProblem, start: number[]): number[] => {
  const { graph, isTerminal } = problem;
  const { first, neighbour, edge, cost } = graph;
  const heap = new IndexHeap(graph.nodes);
  const distance = new Float64Array(graph.nodes);
  const parentEdge = new Int32Array(graph.nodes);
  const stamp = new Int32Array(graph.nodes);
  const interior = new Int32Array(graph.nodes);
  let round = 0;
  let tree = start;
  let view: RootedTree = rootedTree(problem, tree);
  const isKey = (v: number): boolean => isTerminal[v] === 1 || (view.degree[v] ?? 0) >= 3;

  /** The shortest path, cheaper than `limit`, between the parts that the path above `v` joins; null when none. */
  const betterPath = (v: number, between: number, limit: number): number[] | null => {
    const from = view.place[v] ?? 0;
    const to = from + (view.size[v] ?? 0);
    const all = view.order.length;
    const below = to - from;
    const fromBelow = below <= all - below - between;
    heap.clear();
    const inside = (u: number): boolean => {
      const place = view.place[u] ?? -1;
      return place >= from && place < to;
    };
    const look = (u: number, du: number): void => {
      const end = first[u + 1] ?? 0;
      for (let k = first[u] ?? 0; k < end; k++) {
        const w = neighbour[k] ?? 0;
        const e = edge[k] ?? 0;
        const d = du + (cost[e] ?? 0);
        if (d >= limit || (stamp[w] === round && d >= (distance[w] ?? 0))) continue;
        stamp[w] = round;
        distance[w] = d;
        parentEdge[w] = e;
        heap.set(w, d);
      }
    };
    for (const looking of [false, true]) {
      for (let i = fromBelow ? from : 0; i < (fromBelow ? to : all); i++) {
        const u = view.order[i] ?? 0;
        if (interior[u] === round || inside(u) !== fromBelow) continue;
        if (looking) {
          look(u, 0);
          continue;
        }
        distance[u] = 0;
        parentEdge[u] = -1;
        stamp[u] = round;
      }
    }
    for (let u = heap.pop(); u >= 0; u = heap.pop()) {
      if ((view.place[u] ?? -1) >= 0 && interior[u] !== round && inside(u) !== fromBelow) {
        const path: number[] = [];
        for (let w = u, e = parentEdge[w] ?? -1; e >= 0; e = parentEdge[w] ?? -1) {
          path.push(e);
          w = otherEnd(graph, e, w);
        }
        return path;
      }
      look(u, distance[u] ?? 0);
    }
    return null;
  };

  for (const v of view.order.slice().reverse()) {
    if ((view.place[v] ?? -1) <= 0 || !isKey(v)) continue;
    round++;
    const taken = new Set<number>();
    let length = 0;
    let between = 0;
    let u = v;
    do {
      const e = view.parentEdge[u] ?? 0;
      taken.add(e);
      length += cost[e] ?? 0;
      u = view.parent[u] ?? 0;
      if (!isKey(u)) {
        interior[u] = round;
        between++;
      }
    } while (!isKey(u));
    const path = betterPath(v, between, length * (1 - 1e-9));
    if (path === null) continue;
    tree = problem.spanningOf(problem.sorted([...tree.filter((e) => !taken.has(e)), ...path]));
    view = rootedTree(problem, tree);
  }
  return tree;
};
