import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Cap, CappedChoice } from "./index.ts";

/** The heaviest allowed set that holds the forced ones, by trying every set. */
function bruteForce(weights: readonly number[], caps: readonly Cap[], forced: readonly number[]): number {
  let best = Number.NEGATIVE_INFINITY;
  const least = caps.map((cap) => Math.max(cap.most, forced.filter((i) => cap.members.includes(i)).length));
  for (let set = 0; set < 1 << weights.length; set++) {
    if (forced.some((i) => (set & (1 << i)) === 0)) continue;
    const allowed = caps.every(
      (cap, c) => cap.members.filter((i) => (set & (1 << i)) !== 0).length <= (least[c] ?? 0),
    );
    if (!allowed) continue;
    best = Math.max(
      best,
      weights.reduce((sum, w, i) => (set & (1 << i) ? sum + w : sum), 0),
    );
  }
  return best;
}

const problem = fc.integer({ min: 1, max: 12 }).chain((count) =>
  fc.record({
    weights: fc.array(fc.integer({ min: -20, max: 40 }), { minLength: count, maxLength: count }),
    caps: fc.array(
      fc.record({
        members: fc.uniqueArray(fc.nat(count - 1), { maxLength: count }),
        most: fc.nat(3),
      }),
      { maxLength: 5 },
    ),
    forced: fc.uniqueArray(fc.nat(count - 1), { maxLength: 2 }),
  }),
);

describe("CappedChoice", () => {
  it("takes the heaviest of each of two disjoint groups, and what is free", () => {
    const choice = new CappedChoice(6, [
      { members: [0, 1, 2], most: 2 },
      { members: [3, 4], most: 1 },
    ]);
    expect(choice.exact).toBe(true);
    expect(choice.heaviest([5, 9, 7, 1, 2, 3])).toEqual({ chosen: [1, 2, 4, 5], value: 21, upperBound: 21 });
  });

  it("is exact by the greedy choice where groups nest, and knows when they cross", () => {
    const nested: readonly Cap[] = [
      { members: [0, 1, 2, 3], most: 2 },
      { members: [0, 1], most: 1 },
    ];
    expect(new CappedChoice(4, nested).exact).toBe(true);
    expect(new CappedChoice(4, [...nested, { members: [1, 2], most: 1 }]).exact).toBe(false);
  });

  it("leaves out what weighs nothing or less, and keeps what is forced", () => {
    const choice = new CappedChoice(3, [{ members: [0, 1, 2], most: 1 }]);
    expect(choice.heaviest([-1, 0, -3])).toEqual({ chosen: [], value: 0, upperBound: 0 });
    expect(choice.heaviest([5, 9, 7], [0])).toEqual({ chosen: [0], value: 5, upperBound: 5 });
  });

  it("equals trying every allowed set, whatever the groups", () => {
    fc.assert(
      fc.property(problem, ({ weights, caps, forced }) => {
        const choice = new CappedChoice(weights.length, caps);
        const found = choice.heaviest(weights, forced);
        expect(found.value).toBe(bruteForce(weights, caps, forced));
        expect(found.upperBound).toBe(found.value);
        if (forced.length === 0) expect(choice.allows(found.chosen)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  it("gives a bound when the search is too long: no allowed set has more", () => {
    // Crossing groups of pairs in a ring: the greedy choice is not the best, and the bound stays above it.
    const count = 60;
    const caps = Array.from({ length: count }, (_, i): Cap => ({ members: [i, (i + 1) % count], most: 1 }));
    const weights = Array.from({ length: count }, (_, i) => 10 + ((i * 7) % 5));
    const found = new CappedChoice(count, caps).heaviest(weights);
    expect(new CappedChoice(count, caps).allows(found.chosen)).toBe(true);
    expect(found.upperBound).toBeGreaterThanOrEqual(found.value);
    const alternate = weights.filter((_, i) => i % 2 === 0).reduce((a, b) => a + b, 0);
    expect(found.upperBound).toBeGreaterThanOrEqual(alternate);
  });
});
