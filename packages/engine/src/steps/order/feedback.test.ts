import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Arc } from "./digraph.ts";
import { strongParts } from "./digraph.ts";
import { leastFeedback } from "./feedback.ts";
import { forwardOrder } from "./sparse.ts";

const graph = (most: number, arcs: number, weights: readonly number[]) =>
  fc.integer({ min: 2, max: most }).chain((nodes) =>
    fc.record({
      nodes: fc.constant(nodes),
      arcs: fc
        .uniqueArray(
          fc.record({
            from: fc.nat(nodes - 1),
            to: fc.nat(nodes - 1),
            weight: fc.constantFrom(...weights),
          }),
          { maxLength: arcs, selector: ({ from, to }) => `${from} ${to}` },
        )
        .map((list): Arc[] => list.filter(({ from, to }) => from !== to)),
    }),
  );

/** The least weight over every order of the nodes: arcs that lead backward in it are what is given up. */
function leastByOrders(nodes: number, arcs: readonly Arc[]): number {
  let best = Number.POSITIVE_INFINITY;
  const place = new Array<number>(nodes).fill(-1);
  const visit = (at: number): void => {
    if (at === nodes) {
      const sum = arcs.reduce(
        (total, { from, to, weight }) => total + ((place[from] ?? 0) > (place[to] ?? 0) ? weight : 0),
        0,
      );
      best = Math.min(best, sum);
      return;
    }
    for (let node = 0; node < nodes; node++) {
      if (place[node] !== -1) continue;
      place[node] = at;
      visit(at + 1);
      place[node] = -1;
    }
  };
  visit(0);
  return best;
}

describe("leastFeedback", () => {
  it("gives up as little as the best of all orders", () => {
    fc.assert(
      fc.property(graph(6, 18, [1, 2, 4, 16, 64]), ({ nodes, arcs }) => {
        const found = leastFeedback(nodes, arcs);
        const gone = new Set(found.arcs);
        expect(
          forwardOrder(
            nodes,
            arcs.filter((_, i) => !gone.has(i)),
          ),
        ).not.toBeNull();
        expect(found.arcs.reduce((sum, i) => sum + (arcs[i]?.weight ?? 0), 0)).toBe(found.weight);
        expect(found.weight).toBe(leastByOrders(nodes, arcs));
        expect(found.lowerBound).toBe(found.weight);
      }),
      { numRuns: 200, seed: 4 },
    );
  });

  it("stays beneath the best with its bound, and above it with its set, when it is cut short", () => {
    fc.assert(
      fc.property(graph(6, 24, [1, 4, 5, 16]), ({ nodes, arcs }) => {
        const found = leastFeedback(nodes, arcs, { visits: 0 });
        const gone = new Set(found.arcs);
        const best = leastByOrders(nodes, arcs);
        expect(
          forwardOrder(
            nodes,
            arcs.filter((_, i) => !gone.has(i)),
          ),
        ).not.toBeNull();
        expect(found.weight).toBeGreaterThanOrEqual(best);
        expect(found.lowerBound).toBeLessThanOrEqual(best);
      }),
      { numRuns: 200, seed: 8 },
    );
  });
});

describe("strongParts", () => {
  it("puts two nodes together exactly when each is reached from the other", () => {
    fc.assert(
      fc.property(graph(9, 20, [1]), ({ nodes, arcs }) => {
        const reach = Array.from({ length: nodes }, (_, i) => new Set([i]));
        for (let round = 0; round < nodes; round++)
          for (const { from, to } of arcs) for (const own of reach) if (own.has(from)) own.add(to);
        const part = strongParts(nodes, arcs);
        for (let a = 0; a < nodes; a++)
          for (let b = 0; b < nodes; b++)
            expect(part[a] === part[b]).toBe(Boolean(reach[a]?.has(b) && reach[b]?.has(a)));
        for (const { from, to } of arcs) expect(part[from] ?? 0).toBeGreaterThanOrEqual(part[to] ?? 0);
      }),
      { numRuns: 200, seed: 6 },
    );
  });
});
