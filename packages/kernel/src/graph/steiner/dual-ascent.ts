import type { Graph } from "../graph.ts";
import { IndexHeap } from "../heap.ts";

/** A bound from below for Steiner trees, with what it leaves of every arc's cost. */
export interface SteinerBound {
  /** No tree that joins the terminals costs less. Infinity when they cannot be joined. */
  readonly bound: number;
  /** The terminal that the arcs lead away from. */
  readonly root: number;
  /** Reduced cost of arc a→b of edge e at 2e, of b→a at 2e + 1. */
  readonly reduced: Float64Array;
}

/**
 * Dual ascent on the directed cut formulation (R. T. Wong, Mathematical Programming 28 (1984) 271–287): while some
 * terminal is not reached from the root through arcs without reduced cost, the cut round what reaches that terminal
 * is paid for as far as its cheapest arc allows. Cuts with the fewest arcs go first.
 */
export const steinerLowerBound = (
  graph: Graph,
  terminals: readonly number[],
  root: number = terminals[0] ?? 0,
): SteinerBound => {
  const { nodes, first, neighbour, edge, a } = graph;
  const reduced = new Float64Array(2 * graph.edges);
  for (let e = 0; e < graph.edges; e++) {
    reduced[2 * e] = graph.cost[e] ?? 0;
    reduced[2 * e + 1] = graph.cost[e] ?? 0;
  }
  const waiting = new IndexHeap(nodes);
  const active = new Uint8Array(nodes);
  for (const t of terminals) {
    if (t === root) continue;
    active[t] = 1;
    waiting.set(t, (first[t + 1] ?? 0) - (first[t] ?? 0));
  }
  const seen = new Int32Array(nodes).fill(-1);
  const inside = new Int32Array(nodes);
  const cut = new Int32Array(2 * graph.edges);
  let bound = 0;
  let round = 0;
  for (let t = waiting.pop(); t >= 0; t = waiting.pop()) {
    let reached = false;
    while (!reached) {
      round++;
      let count = 1;
      inside[0] = t;
      seen[t] = round;
      let cuts = 0;
      for (let i = 0; i < count && !reached; i++) {
        const v = inside[i] ?? 0;
        const end = first[v + 1] ?? 0;
        for (let k = first[v] ?? 0; k < end; k++) {
          const u = neighbour[k] ?? 0;
          if (seen[u] === round) continue;
          const e = edge[k] ?? 0;
          const arc = a[e] === u ? 2 * e : 2 * e + 1;
          if ((reduced[arc] ?? 0) > 0) {
            cut[cuts++] = arc;
            continue;
          }
          if (u === root || active[u] === 1) {
            reached = true;
            break;
          }
          seen[u] = round;
          inside[count++] = u;
        }
      }
      if (reached) break;
      let least = Number.POSITIVE_INFINITY;
      let kept = 0;
      for (let k = 0; k < cuts; k++) {
        const arc = cut[k] ?? 0;
        const tail = (arc & 1) === 0 ? (a[arc >> 1] ?? 0) : (graph.b[arc >> 1] ?? 0);
        if (seen[tail] === round) continue;
        cut[kept++] = arc;
        least = Math.min(least, reduced[arc] ?? 0);
      }
      if (kept === 0) return { bound: Number.POSITIVE_INFINITY, root, reduced };
      if (kept > waiting.leastKey()) {
        waiting.set(t, kept);
        break;
      }
      bound += least;
      for (let k = 0; k < kept; k++) {
        const arc = cut[k] ?? 0;
        const left = (reduced[arc] ?? 0) - least;
        reduced[arc] = left < 1e-12 * least ? 0 : left;
      }
    }
    if (reached) active[t] = 0;
  }
  return { bound, root, reduced };
};
