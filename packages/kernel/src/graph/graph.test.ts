import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  connectedComponents,
  createGraph,
  type EdgeInput,
  IndexHeap,
  minimumSpanningTree,
  otherEnd,
  pathTo,
  shortestPaths,
  UnionFind,
} from "./index.ts";

const problem = fc.integer({ min: 1, max: 9 }).chain((n) =>
  fc.record({
    n: fc.constant(n),
    edges: fc.array(fc.record({ a: fc.nat(n - 1), b: fc.nat(n - 1), cost: fc.nat(20) }), { maxLength: 25 }),
  }),
);

/** All distances by R. W. Floyd's three loops. */
const allDistances = (n: number, edges: readonly EdgeInput[]): number[][] => {
  const d = Array.from({ length: n }, (_, i) =>
    Array.from({ length: n }, (_, j) => (i === j ? 0 : Number.POSITIVE_INFINITY)),
  );
  const lower = (i: number, j: number, x: number): void => {
    const row = d[i];
    if (row !== undefined) row[j] = Math.min(row[j] ?? 0, x);
  };
  for (const { a, b, cost } of edges) {
    lower(a, b, cost);
    lower(b, a, cost);
  }
  for (let k = 0; k < n; k++) {
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) lower(i, j, (d[i]?.[k] ?? 0) + (d[k]?.[j] ?? 0));
    }
  }
  return d;
};

describe("shortestPaths", () => {
  it("agrees with Floyd's algorithm, and its paths have the length it says (seed 21)", () => {
    fc.assert(
      fc.property(problem, fc.nat(8), ({ n, edges }, s) => {
        const source = s % n;
        const graph = createGraph(n, edges);
        const paths = shortestPaths(graph, [source]);
        expect([...paths.distance]).toEqual(allDistances(n, edges)[source]);
        for (let v = 0; v < n; v++) {
          const path = pathTo(graph, paths, v);
          if (path === null) {
            expect(paths.distance[v]).toBe(Number.POSITIVE_INFINITY);
            continue;
          }
          let at = source;
          let length = 0;
          for (const e of path) {
            at = otherEnd(graph, e, at);
            length += graph.cost[e] ?? 0;
          }
          expect([at, length]).toEqual([v, paths.distance[v]]);
        }
      }),
      { seed: 21, numRuns: 300 },
    );
  });

  it("starts from the nearest of several sources", () => {
    const line = createGraph(
      5,
      [0, 1, 2, 3].map((a) => ({ a, b: a + 1, cost: 1 })),
    );
    expect([...shortestPaths(line, [0, 4]).distance]).toEqual([0, 1, 2, 1, 0]);
  });
});

describe("minimumSpanningTree and connectedComponents", () => {
  it("span every component with n − components edges, none of which could be exchanged (seed 22)", () => {
    fc.assert(
      fc.property(problem, ({ n, edges }) => {
        const graph = createGraph(n, edges);
        const { count, of } = connectedComponents(graph);
        const tree = minimumSpanningTree(graph);
        expect(tree).toHaveLength(n - count);
        const reach = allDistances(n, edges);
        for (let i = 0; i < n; i++) {
          for (let j = 0; j < n; j++) expect(of[i] === of[j]).toBe(Number.isFinite(reach[i]?.[j]));
        }
        edges.forEach((edge, e) => {
          if (tree.includes(e) || edge.a === edge.b) return;
          // The cut property: with all cheaper tree edges the ends of an edge left out are joined already.
          const sets = new UnionFind(n);
          for (const f of tree)
            if ((graph.cost[f] ?? 0) <= edge.cost) sets.join(graph.a[f] ?? 0, graph.b[f] ?? 0);
          expect(sets.find(edge.a)).toBe(sets.find(edge.b));
        });
      }),
      { seed: 22, numRuns: 300 },
    );
  });
});

describe("IndexHeap", () => {
  it("gives back numbers by key, then by number, after any changes of keys (seed 23)", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(19), fc.nat(5)), { maxLength: 60 }), (sets) => {
        const heap = new IndexHeap(20);
        const keys = new Map<number, number>();
        for (const [i, key] of sets) {
          heap.set(i, key);
          keys.set(i, key);
        }
        expect(heap.size).toBe(keys.size);
        const out: number[] = [];
        for (let i = heap.pop(); i >= 0; i = heap.pop()) out.push(i);
        expect(out).toEqual([...keys].sort(([i, x], [j, y]) => x - y || i - j).map(([i]) => i));
      }),
      { seed: 23, numRuns: 300 },
    );
  });
});

describe("createGraph", () => {
  it("refuses an edge to nowhere and a negative cost", () => {
    expect(() => createGraph(2, [{ a: 0, b: 2, cost: 1 }])).toThrow("edge 0 ends at node 2, expected 0 to 1");
    expect(() => createGraph(2, [{ a: 0, b: 1, cost: -1 }])).toThrow("edge 0 costs -1");
  });
});
