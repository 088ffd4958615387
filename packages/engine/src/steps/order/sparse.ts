import { type Arc, leaving } from "./digraph.ts";

/** Nodes in an order in which every arc leads forward; null when there is a loop. Of free nodes the lowest goes first. */
export function forwardOrder(nodes: number, arcs: readonly Arc[]): readonly number[] | null {
  const waits = new Int32Array(nodes);
  for (const { to } of arcs) waits[to] = (waits[to] ?? 0) + 1;
  const out = leaving(nodes, arcs);
  const order: number[] = [];
  for (let node = 0; node < nodes; node++) if (waits[node] === 0) order.push(node);
  for (let i = 0; i < order.length; i++)
    for (const index of out[order[i] ?? -1] ?? []) {
      const to = arcs[index]?.to ?? 0;
      waits[to] = (waits[to] ?? 0) - 1;
      if (waits[to] === 0) order.push(to);
    }
  return order.length === nodes ? order : null;
}

/**
 * Indices of the arcs of a graph without loops that do not follow from others: its transitive reduction (Aho, Garey
 * and Ullman 1972). Of arcs between the same two nodes the first is kept.
 */
export function sparseArcs(nodes: number, arcs: readonly Arc[]): readonly number[] {
  const order = forwardOrder(nodes, arcs) ?? [];
  const rank = new Int32Array(nodes);
  order.forEach((node, at) => {
    rank[node] = at;
  });
  const out = leaving(nodes, arcs);
  const words = (nodes + 31) >> 5;
  const reached = new Int32Array(nodes * words);
  const kept: number[] = [];
  for (let i = order.length - 1; i >= 0; i--) {
    const node = order[i] ?? 0;
    const own = node * words;
    // What is nearest in the order cannot follow from what is farther.
    const nearest = (out[node] ?? []).toSorted(
      (a, b) => (rank[arcs[a]?.to ?? 0] ?? 0) - (rank[arcs[b]?.to ?? 0] ?? 0) || a - b,
    );
    for (const index of nearest) {
      const to = arcs[index]?.to ?? 0;
      const word = own + (to >> 5);
      if (((reached[word] ?? 0) >>> (to & 31)) & 1) continue;
      kept.push(index);
      for (let w = 0; w < words; w++)
        reached[own + w] = (reached[own + w] ?? 0) | (reached[to * words + w] ?? 0);
      reached[word] = (reached[word] ?? 0) | (1 << (to & 31));
    }
  }
  return kept.sort((a, b) => a - b);
}
