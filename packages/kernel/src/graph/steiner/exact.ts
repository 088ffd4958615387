import { otherEnd } from "../dijkstra.ts";
import type { Graph } from "../graph.ts";
import { IndexHeap } from "../heap.ts";

/** Steps that `exactTree` would take, about: what decides whether it is worth while. */
export const exactSteps = (graph: Graph, terminals: number): number =>
  3 ** (terminals - 1) * graph.nodes + 2 ** (terminals - 1) * 20 * graph.edges;

/**
 * The cheapest tree that joins the terminals, by the dynamic programme over sets of terminals (S. E. Dreyfus,
 * R. A. Wagner, Networks 1 (1971) 195–207; R. E. Erickson, C. L. Monma, A. F. Veinott 1987): for few terminals.
 * @param below only trees cheaper than this are looked for
 * @returns its edges, or null when there is none that is cheaper
 */
export const exactTree = (graph: Graph, terminals: readonly number[], below: number): number[] | null => {
  const n = graph.nodes;
  const root = terminals[0] ?? 0;
  const others = terminals.slice(1);
  const full = (1 << others.length) - 1;
  const cost = new Float64Array((full + 1) * n).fill(Number.POSITIVE_INFINITY);
  /** How a state came about: −1 a terminal itself, an edge number, or −2 − the one part of two. */
  const how = new Int32Array((full + 1) * n).fill(-1);
  const heap = new IndexHeap(n);
  for (let set = 1; set <= full; set++) {
    const row = set * n;
    if ((set & (set - 1)) === 0) {
      cost[row + (others[31 - Math.clz32(set)] ?? 0)] = 0;
    } else {
      for (let part = (set - 1) & set; part > set - part; part = (part - 1) & set) {
        const x = part * n;
        const y = (set ^ part) * n;
        for (let v = 0; v < n; v++) {
          const sum = (cost[x + v] ?? 0) + (cost[y + v] ?? 0);
          if (sum < (cost[row + v] ?? 0)) {
            cost[row + v] = sum;
            how[row + v] = -2 - part;
          }
        }
      }
    }
    for (let v = 0; v < n; v++) if ((cost[row + v] ?? 0) < below) heap.set(v, cost[row + v] ?? 0);
    for (let u = heap.pop(); u >= 0; u = heap.pop()) {
      const du = cost[row + u] ?? 0;
      const end = graph.first[u + 1] ?? 0;
      for (let k = graph.first[u] ?? 0; k < end; k++) {
        const v = graph.neighbour[k] ?? 0;
        const e = graph.edge[k] ?? 0;
        const d = du + (graph.cost[e] ?? 0);
        if (d < (cost[row + v] ?? 0) && d < below) {
          cost[row + v] = d;
          how[row + v] = e;
          heap.set(v, d);
        }
      }
    }
  }
  if (!((cost[full * n + root] ?? 0) < below)) return null;
  const edges: number[] = [];
  const open: { readonly set: number; readonly v: number }[] = [{ set: full, v: root }];
  for (let state = open.pop(); state !== undefined; state = open.pop()) {
    const { set, v } = state;
    const h = how[set * n + v] ?? -1;
    if (h >= 0) {
      edges.push(h);
      open.push({ set, v: otherEnd(graph, h, v) });
    } else if (h < -1) {
      const part = -2 - h;
      open.push({ set: part, v }, { set: set ^ part, v });
    }
  }
  return edges;
};
