import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { csvRows } from "../../testing/csv-rows.ts";
import { createGraph, type EdgeInput, type Graph, UnionFind } from "../index.ts";
import { readStp } from "../testing/stp.ts";
import { type SteinerTree, steinerLowerBound, steinerTree } from "./index.ts";

const STEINLIB = new URL("../testing/steinlib/", import.meta.url);
const INSTANCES = csvRows(new URL("optima.csv", STEINLIB)).map((row) => ({
  name: row.instance ?? "",
  optimum: Number(row.optimum),
}));

/** The definition: edges without a circle that join all terminals, and whose costs add up. */
const expectTree = (graph: Graph, terminals: readonly number[], tree: SteinerTree): void => {
  const sets = new UnionFind(graph.nodes);
  let cost = 0;
  for (const e of tree.edges) {
    expect(sets.join(graph.a[e] ?? -1, graph.b[e] ?? -1)).toBe(true);
    cost += graph.cost[e] ?? Number.NaN;
  }
  expect(new Set(terminals.map((t) => sets.find(t))).size).toBe(terminals.length > 0 ? 1 : 0);
  expect(tree.value).toBeCloseTo(cost, 6);
  expect(tree.lowerBound).toBeLessThanOrEqual(tree.value);
};

describe("steinerTree on SteinLib (proved optima)", () => {
  const small = INSTANCES.filter(
    ({ name }) => name.startsWith("b") || ["c01", "c06", "c07", "c12"].includes(name),
  );

  it("has a mean gap of at most 0.3 % on all of set B and the quick ones of C", () => {
    const gaps = small.map(({ name, optimum }) => {
      const { graph, terminals } = readStp(new URL(`${name}.stp`, STEINLIB));
      const tree = steinerTree(graph, terminals);
      if (tree === null) throw new Error(`${name}: no tree`);
      expectTree(graph, terminals, tree);
      expect(tree.value, name).toBeGreaterThanOrEqual(optimum);
      expect(tree.lowerBound, name).toBeLessThanOrEqual(optimum);
      return tree.value / optimum - 1;
    });
    expect(gaps).toHaveLength(13);
    expect(gaps.reduce((a, b) => a + b, 0) / gaps.length).toBeLessThanOrEqual(0.003);
  });

  it("stays within 2 % of the optimum after a single start", () => {
    for (const { name, optimum } of small) {
      const { graph, terminals } = readStp(new URL(`${name}.stp`, STEINLIB));
      expect(steinerTree(graph, terminals, 1)?.value, name).toBeLessThanOrEqual(1.02 * optimum);
    }
  });
});

describe("steinerLowerBound", () => {
  it.each(INSTANCES)("is at most the optimum and at least 90 % of it: $name", ({ name, optimum }) => {
    const { graph, terminals } = readStp(new URL(`${name}.stp`, STEINLIB));
    const { bound, reduced } = steinerLowerBound(graph, terminals);
    expect(bound).toBeLessThanOrEqual(optimum + 1e-9);
    expect(bound).toBeGreaterThan(0.9 * optimum);
    expect(reduced.every((c) => c >= 0)).toBe(true);
  });
});

const smallProblem = fc.integer({ min: 2, max: 8 }).chain((n) =>
  fc.record({
    n: fc.constant(n),
    edges: fc.array(
      fc.record({
        a: fc.nat(n - 1),
        b: fc.nat(n - 1),
        cost: fc.oneof(fc.nat(9), fc.double({ min: 0, max: 9, noNaN: true })),
      }),
      { maxLength: 20 },
    ),
    terminals: fc.uniqueArray(fc.nat(n - 1), { minLength: 1, maxLength: 6 }),
  }),
);

/** Every choice of nodes beside the terminals, each with its spanning tree by trying edges in order of cost. */
const bruteForce = (n: number, edges: readonly EdgeInput[], terminals: readonly number[]): number => {
  const sorted = edges.toSorted((x, y) => x.cost - y.cost);
  let best = Number.POSITIVE_INFINITY;
  for (let set = 0; set < 1 << n; set++) {
    if (!terminals.every((t) => (set & (1 << t)) !== 0)) continue;
    const part = Array.from({ length: n }, (_, v) => v);
    let cost = 0;
    for (const e of sorted) {
      if ((set & (1 << e.a)) === 0 || (set & (1 << e.b)) === 0) continue;
      const from = part[e.a] ?? 0;
      const to = part[e.b] ?? 0;
      if (from === to) continue;
      cost += e.cost;
      part.forEach((p, v) => {
        if (p === from) part[v] = to;
      });
    }
    const parts = new Set(part.filter((_, v) => (set & (1 << v)) !== 0));
    if (parts.size <= 1) best = Math.min(best, cost);
  }
  return best;
};

describe("steinerTree on small graphs", () => {
  it("is the optimum that trying everything finds, and null when there is none (seed 5)", () => {
    fc.assert(
      fc.property(smallProblem, ({ n, edges, terminals }) => {
        const graph = createGraph(n, edges);
        const optimum = bruteForce(n, edges, terminals);
        const tree = steinerTree(graph, terminals);
        const bound = steinerLowerBound(graph, terminals).bound;
        if (optimum === Number.POSITIVE_INFINITY) {
          expect(tree).toBeNull();
          expect(bound).toBe(Number.POSITIVE_INFINITY);
          return;
        }
        if (tree === null) throw new Error("no tree");
        expectTree(graph, terminals, tree);
        expect(tree.value).toBeCloseTo(optimum, 6);
        expect(bound).toBeLessThanOrEqual(optimum + 1e-9);
      }),
      { seed: 5, numRuns: 500 },
    );
  });

  it("gives an empty tree for one terminal or none, however often it is named", () => {
    const graph = createGraph(3, [{ a: 0, b: 1, cost: 1 }]);
    expect(steinerTree(graph, [])).toEqual({ edges: [], value: 0, lowerBound: 0 });
    expect(steinerTree(graph, [1, 1])).toEqual({ edges: [], value: 0, lowerBound: 0 });
  });

  it("refuses a terminal that is no node", () => {
    expect(() => steinerTree(createGraph(2, []), [0, 2])).toThrow("terminal is node 2, expected 0 to 1");
  });
});
