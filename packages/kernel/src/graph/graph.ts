/** An edge between two nodes, with a cost that is not negative. */
export interface EdgeInput {
  readonly a: number;
  readonly b: number;
  readonly cost: number;
}

/**
 * An undirected graph over nodes 0 … n−1, laid out for search: the half-edges of node v are the indices
 * `first[v]` … `first[v + 1] − 1` of `neighbour` and `edge`. Edge e joins `a[e]` and `b[e]`. Never changed once made.
 */
export interface Graph {
  readonly nodes: number;
  readonly edges: number;
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly cost: Float64Array;
  readonly first: Int32Array;
  readonly neighbour: Int32Array;
  readonly edge: Int32Array;
}

/**
 * Lays out a graph. Parallel edges and loops are allowed. Edge e of the result is `edges[e]`.
 * @throws RangeError for a node out of range, or a cost that is negative or not finite.
 */
export const createGraph = (nodes: number, edges: readonly EdgeInput[]): Graph => {
  const m = edges.length;
  const a = new Int32Array(m);
  const b = new Int32Array(m);
  const cost = new Float64Array(m);
  edges.forEach((edge, e) => {
    for (const v of [edge.a, edge.b]) {
      if (!Number.isInteger(v) || v < 0 || v >= nodes) {
        throw new RangeError(`edge ${e} ends at node ${v}, expected 0 to ${nodes - 1}`);
      }
    }
    if (!(edge.cost >= 0 && Number.isFinite(edge.cost))) {
      throw new RangeError(`edge ${e} costs ${edge.cost}, expected a finite number of 0 or more`);
    }
    a[e] = edge.a;
    b[e] = edge.b;
    cost[e] = edge.cost;
  });
  return layOut(nodes, a, b, cost);
};

/** Lays out a graph from arrays that are known to be sound; it keeps them. */
export const layOut = (nodes: number, a: Int32Array, b: Int32Array, cost: Float64Array): Graph => {
  const m = a.length;
  const first = new Int32Array(nodes + 1);
  for (let e = 0; e < m; e++) {
    const u = a[e] ?? 0;
    const v = b[e] ?? 0;
    first[u + 1] = (first[u + 1] ?? 0) + 1;
    first[v + 1] = (first[v + 1] ?? 0) + 1;
  }
  for (let v = 0; v < nodes; v++) first[v + 1] = (first[v + 1] ?? 0) + (first[v] ?? 0);
  const fill = first.slice(0, nodes);
  const neighbour = new Int32Array(2 * m);
  const edge = new Int32Array(2 * m);
  const put = (from: number, to: number, e: number): void => {
    const k = fill[from] ?? 0;
    fill[from] = k + 1;
    neighbour[k] = to;
    edge[k] = e;
  };
  for (let e = 0; e < m; e++) {
    put(a[e] ?? 0, b[e] ?? 0, e);
    put(b[e] ?? 0, a[e] ?? 0, e);
  }
  return { nodes, edges: m, a, b, cost, first, neighbour, edge };
};
