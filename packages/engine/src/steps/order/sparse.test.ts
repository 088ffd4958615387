import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Arc } from "./digraph.ts";
import { forwardOrder, sparseArcs } from "./sparse.ts";

const acyclic = fc
  .array(fc.tuple(fc.nat(11), fc.nat(11)), { maxLength: 40 })
  .map((pairs): Arc[] =>
    pairs
      .filter(([a, b]) => a !== b)
      .map(([a, b]) => ({ from: Math.min(a, b), to: Math.max(a, b), weight: 1 })),
  );

/** All pairs of nodes of which the second follows the first. */
function following(arcs: readonly Arc[]): ReadonlySet<string> {
  const pairs = new Set(arcs.map(({ from, to }) => `${from} ${to}`));
  for (let k = 0; k < 12; k++)
    for (let a = 0; a < 12; a++)
      for (let b = 0; b < 12; b++)
        if (pairs.has(`${a} ${k}`) && pairs.has(`${k} ${b}`)) pairs.add(`${a} ${b}`);
  return pairs;
}

describe("sparseArcs", () => {
  it("keeps what follows from what, and nothing that it can do without", () => {
    fc.assert(
      fc.property(acyclic, (arcs) => {
        const kept = sparseArcs(12, arcs).flatMap((i) => arcs[i] ?? []);
        expect(following(kept)).toEqual(following(arcs));
        for (const arc of kept) {
          const fewer = kept.filter((other) => other !== arc);
          expect(following(fewer).size).toBeLessThan(following(kept).size);
        }
      }),
      { numRuns: 100, seed: 2 },
    );
  });
});

describe("forwardOrder", () => {
  it("is null exactly when there is a loop", () => {
    expect(forwardOrder(3, [{ from: 0, to: 1, weight: 1 }])).toEqual([0, 2, 1]);
    const loop = [0, 1, 2].map((from) => ({ from, to: (from + 1) % 3, weight: 1 }));
    expect(forwardOrder(3, loop)).toBeNull();
  });
});
