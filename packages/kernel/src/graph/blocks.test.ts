import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { blocksOf } from "./blocks.ts";

type Edge = readonly [number, number];

/** Whether a closed way without a repeated node passes two edges, by trying every way. */
function onOneCycle(edges: readonly Edge[], first: number, second: number): boolean {
  const [start, goal] = edges[first] ?? [0, 0];
  const search = (node: number, nodes: ReadonlySet<number>, passed: boolean): boolean =>
    edges.some(([a, b], e) => {
      if (e === first || (a !== node && b !== node)) return false;
      const to = a === node ? b : a;
      const through = passed || e === second;
      if (to === goal) return through;
      return !nodes.has(to) && search(to, new Set([...nodes, to]), through);
    });
  return search(start, new Set([start]), false);
}

describe("blocksOf", () => {
  it("finds two triangles that meet at a node, and the bridge that hangs on one", () => {
    const edges: Edge[] = [
      [0, 1],
      [1, 2],
      [2, 0],
      [2, 3],
      [3, 4],
      [4, 2],
      [4, 5],
    ];
    expect([...blocksOf(6, edges)]).toEqual([0, 0, 0, 1, 1, 1, 2]);
  });

  it("takes parallel edges as a closed way, and an edge to its own node by itself", () => {
    const edges: Edge[] = [
      [0, 1],
      [1, 0],
      [1, 1],
      [1, 2],
    ];
    expect([...blocksOf(3, edges)]).toEqual([0, 0, 1, 2]);
  });

  it("puts two edges into one block just when a closed way passes both", () => {
    const graph = fc.array(
      fc
        .tuple(fc.nat(5), fc.nat(5))
        .filter(([a, b]) => a !== b)
        .map(([a, b]): Edge => [a, b]),
      { maxLength: 8 },
    );
    fc.assert(
      fc.property(graph, (edges) => {
        const blocks = blocksOf(6, edges);
        for (let e = 0; e < edges.length; e++)
          for (let f = 0; f < e; f++) expect(blocks[e] === blocks[f]).toBe(onOneCycle(edges, e, f));
      }),
    );
  });
});
