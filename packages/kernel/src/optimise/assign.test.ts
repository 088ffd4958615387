import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assign } from "./index.ts";

/** Every way to give rows different columns. */
const bruteForce = (costs: readonly (readonly number[])[], row = 0, used = 0): number => {
  const list = costs[row];
  if (list === undefined) return 0;
  return Math.min(
    Number.POSITIVE_INFINITY,
    ...list.map((c, j) =>
      (used & (1 << j)) === 0 ? c + bruteForce(costs, row + 1, used | (1 << j)) : Number.POSITIVE_INFINITY,
    ),
  );
};

describe("assign", () => {
  it("is the cheapest of all assignments, forbidden pairs and negative costs included (seed 41)", () => {
    const table = fc
      .tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 0, max: 2 }))
      .chain(([rows, more]) =>
        fc.array(
          fc.array(
            fc.oneof(
              { weight: 5, arbitrary: fc.integer({ min: -9, max: 20 }) },
              fc.constant(Number.POSITIVE_INFINITY),
            ),
            {
              minLength: rows + more,
              maxLength: rows + more,
            },
          ),
          { minLength: rows, maxLength: rows },
        ),
      );
    fc.assert(
      fc.property(table, (costs) => {
        const best = bruteForce(costs);
        const found = assign(costs);
        if (best === Number.POSITIVE_INFINITY) {
          expect(found).toBeNull();
          return;
        }
        if (found === null) throw new Error("no assignment");
        expect(found.value).toBe(best);
        expect(new Set(found.columnOf).size).toBe(costs.length);
        expect(found.columnOf.reduce((sum, j, i) => sum + (costs[i]?.[j] ?? Number.NaN), 0)).toBe(best);
      }),
      { seed: 41, numRuns: 500 },
    );
  });

  it("gives null for more rows than columns, and nothing for no rows", () => {
    expect(assign([[1], [2]])).toBeNull();
    expect(assign([])).toEqual({ columnOf: [], value: 0 });
  });

  it("refuses rows of unequal length", () => {
    expect(() => assign([[1, 2], [3]])).toThrow("a row has 1 costs, expected 2");
  });
});
