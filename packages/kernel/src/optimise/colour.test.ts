import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type ColouringProblem, colourGraph } from "./index.ts";

const problem: fc.Arbitrary<ColouringProblem> = fc.integer({ min: 1, max: 6 }).chain((n) =>
  fc.record({
    allowed: fc.array(
      fc.uniqueArray(fc.record({ colour: fc.nat(3), cost: fc.nat(9) }), {
        selector: (c) => c.colour,
        maxLength: 4,
      }),
      { minLength: n, maxLength: n },
    ),
    conflicts: fc
      .array(fc.tuple(fc.nat(n - 1), fc.nat(n - 1)), { maxLength: 10 })
      .map((pairs) => pairs.filter(([a, b]) => a !== b)),
  }),
);

/** Cheapest complete colouring by trying all; Infinity when there is none. */
const bruteForce = ({ allowed, conflicts }: ColouringProblem, chosen: readonly number[] = []): number => {
  const list = allowed[chosen.length];
  if (list === undefined) return 0;
  const v = chosen.length;
  let best = Number.POSITIVE_INFINITY;
  for (const { colour, cost } of list) {
    const clash = conflicts.some(
      ([a, b]) => (a === v && chosen[b] === colour) || (b === v && chosen[a] === colour),
    );
    if (!clash) best = Math.min(best, cost + bruteForce({ allowed, conflicts }, [...chosen, colour]));
  }
  return best;
};

describe("colourGraph", () => {
  it("never breaks a conflict or uses a colour that is not allowed, and bounds the optimum (seed 51)", () => {
    let complete = 0;
    let optimal = 0;
    let possible = 0;
    fc.assert(
      fc.property(problem, (p) => {
        const found = colourGraph(p);
        for (const [a, b] of p.conflicts) {
          if (found.colours[a] !== null) expect(found.colours[a]).not.toBe(found.colours[b]);
        }
        let value = 0;
        found.colours.forEach((c, v) => {
          const cell = p.allowed[v]?.find((x) => x.colour === c);
          expect(c === null).toBe(found.uncoloured.includes(v));
          if (c !== null) expect(cell).toBeDefined();
          value += cell?.cost ?? 0;
        });
        expect(found.value).toBe(value);
        for (const a of found.clique) {
          for (const b of found.clique) {
            if (a < b)
              expect(p.conflicts.some(([x, y]) => (x === a && y === b) || (x === b && y === a))).toBe(true);
          }
        }
        const best = bruteForce(p);
        if (best === Number.POSITIVE_INFINITY) {
          expect(found.uncoloured.length).toBeGreaterThan(0);
          return;
        }
        possible++;
        expect(found.lowerBound).toBeLessThanOrEqual(best);
        if (found.uncoloured.length > 0) return;
        complete++;
        if (found.value === best) optimal++;
      }),
      { seed: 51, numRuns: 1000 },
    );
    expect(complete / possible).toBeGreaterThan(0.99);
    expect(optimal / complete).toBeGreaterThan(0.95);
  });

  it("colours an odd ring with three and sees a triangle as a clique of three", () => {
    const allowed = Array.from({ length: 5 }, () => [0, 1, 2].map((colour) => ({ colour, cost: colour })));
    const ring = [0, 1, 2, 3, 4].map((v) => [v, (v + 1) % 5] as const);
    const found = colourGraph({ allowed, conflicts: ring });
    expect(found.uncoloured).toEqual([]);
    expect(found.value).toBe(4);
    const triangle = colourGraph({
      allowed: allowed.slice(0, 3),
      conflicts: [
        [0, 1],
        [1, 2],
        [0, 2],
      ],
    });
    expect(triangle).toMatchObject({ value: 3, lowerBound: 3, clique: [0, 1, 2] });
  });

  it("gives its only colour to a vertex that a neighbour with more choice took first", () => {
    const found = colourGraph({
      allowed: [
        [
          { colour: 0, cost: 0 },
          { colour: 1, cost: 5 },
        ],
        [{ colour: 0, cost: 0 }],
      ],
      conflicts: [[0, 1]],
    });
    expect(found.colours).toEqual([1, 0]);
  });

  it("refuses a vertex in conflict with itself", () => {
    expect(() => colourGraph({ allowed: [[]], conflicts: [[0, 0]] })).toThrow(RangeError);
  });
});
