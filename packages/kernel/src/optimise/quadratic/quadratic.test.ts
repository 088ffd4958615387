import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gilmoreLawlerBound } from "./bound.ts";
import { assignQuadratic, type QuadraticProblem } from "./index.ts";
import { tablesOf } from "./problem.ts";

/**
 * nug12 of C. E. Nugent, T. E. Vollmann, J. Ruml (Operations Research 16 (1968) 150–173), as in QAPLIB (R. E. Burkard,
 * S. E. Karisch, F. Rendl, J. Global Optimization 10 (1997) 391–403): 12 places on a grid of 3 by 4, distances along
 * its lines. Optimum 578, reached by 12 7 9 3 4 8 11 1 5 6 10 2; bound of Gilmore and Lawler 493. All from memory;
 * that the permutation gives 578 and the bound comes out as 493 shows that the memory holds.
 */
const NUG12 = [
  [0, 5, 2, 4, 1, 0, 0, 6, 2, 1, 1, 1],
  [5, 0, 3, 0, 2, 2, 2, 0, 4, 5, 0, 0],
  [2, 3, 0, 0, 0, 0, 0, 5, 5, 2, 2, 2],
  [4, 0, 0, 0, 5, 2, 2, 10, 0, 0, 5, 5],
  [1, 2, 0, 5, 0, 10, 0, 0, 0, 5, 1, 1],
  [0, 2, 0, 2, 10, 0, 5, 1, 1, 5, 4, 0],
  [0, 2, 0, 2, 0, 5, 0, 10, 5, 2, 3, 3],
  [6, 0, 5, 10, 0, 1, 10, 0, 0, 0, 5, 0],
  [2, 4, 5, 0, 0, 1, 5, 0, 0, 0, 10, 10],
  [1, 5, 2, 0, 5, 5, 2, 0, 0, 0, 5, 0],
  [1, 0, 2, 5, 1, 4, 3, 5, 10, 5, 0, 2],
  [1, 0, 2, 5, 1, 0, 3, 0, 10, 0, 2, 0],
];
const NUG12_BEST = [12, 7, 9, 3, 4, 8, 11, 1, 5, 6, 10, 2];

const grid = (columns: number, rows: number): number[][] => {
  const places = Array.from({ length: columns * rows }, (_, i) => [i % columns, Math.floor(i / columns)]);
  return places.map(([x = 0, y = 0]) => places.map(([u = 0, v = 0]) => Math.abs(x - u) + Math.abs(y - v)));
};

const cost = ({ weights, costs }: QuadraticProblem, placeOf: readonly number[]): number => {
  let sum = 0;
  placeOf.forEach((s, i) => {
    placeOf.slice(0, i).forEach((t, j) => {
      sum += (weights[i]?.[j] ?? Number.NaN) * (costs[s]?.[t] ?? Number.NaN);
    });
  });
  return sum;
};

/** The least cost over all ways to place the things. */
function exact(problem: QuadraticProblem): number {
  const { weights, costs, fixed = [] } = problem;
  let least = Number.POSITIVE_INFINITY;
  const place = (placed: readonly number[]): void => {
    if (placed.length === weights.length) {
      least = Math.min(least, cost(problem, placed));
      return;
    }
    const own = fixed[placed.length] ?? null;
    for (let s = 0; s < costs.length; s++) {
      if (placed.includes(s) || (own !== null && own !== s)) continue;
      place([...placed, s]);
    }
  };
  place([]);
  return least;
}

const symmetric = (n: number, most: number): fc.Arbitrary<number[][]> =>
  fc
    .array(fc.integer({ min: 0, max: most }), { minLength: n * n, maxLength: n * n })
    .map((cells) =>
      Array.from({ length: n }, (_, i) =>
        Array.from({ length: n }, (_, j) =>
          i === j ? 0 : (cells[Math.min(i, j) * n + Math.max(i, j)] ?? 0),
        ),
      ),
    );

const small = fc.tuple(fc.integer({ min: 0, max: 5 }), fc.integer({ min: 0, max: 2 })).chain(([n, more]) =>
  fc.record({
    weights: symmetric(n, 9),
    costs: symmetric(n + more, 9),
    fixed: fc.constantFrom<(number | null)[]>([], n > 1 ? [null, n + more - 1] : []),
  }),
);

describe("quadratic assignment", () => {
  it("finds the published optimum of nug12, and the published bound", () => {
    const problem = { weights: NUG12, costs: grid(4, 3) };
    const published: number[] = [];
    // The permutation tells which facility stands at each place.
    NUG12_BEST.forEach((thing, place) => {
      published[thing - 1] = place;
    });
    expect(2 * cost(problem, published)).toBe(578);
    const found = assignQuadratic(problem);
    expect(2 * found.value).toBe(578);
    expect(cost(problem, found.placeOf)).toBe(found.value);
    expect(Math.ceil(2 * gilmoreLawlerBound(tablesOf(problem)))).toBe(493);
  });

  it("equals the best of all placements on small problems, with places to spare and things held (seed 7)", () => {
    fc.assert(
      fc.property(small, (problem) => {
        const best = exact(problem);
        const found = assignQuadratic(problem, { steps: 4000 });
        expect(found.value).toBeCloseTo(best, 9);
        expect(cost(problem, found.placeOf)).toBeCloseTo(best, 9);
        expect(found.lowerBound).toBeLessThanOrEqual(best + 1e-9);
        expect(gilmoreLawlerBound(tablesOf(problem))).toBeLessThanOrEqual(best + 1e-9);
        expect(new Set(found.placeOf).size).toBe(problem.weights.length);
        problem.fixed.forEach((place, i) => {
          if (place !== null) expect(found.placeOf[i]).toBe(place);
        });
      }),
      { seed: 7, numRuns: 120 },
    );
  });

  it("gives a bound that is the value when every thing is held", () => {
    const problem = { weights: NUG12, costs: grid(4, 3), fixed: NUG12.map((_, i) => i) };
    const found = assignQuadratic(problem);
    expect(found.placeOf).toEqual(problem.fixed);
    expect(found.lowerBound).toBeCloseTo(found.value, 9);
  });

  it("refuses what is not symmetric, too many things, and two things at one place", () => {
    expect(() =>
      assignQuadratic({
        weights: [
          [0, 1],
          [2, 0],
        ],
        costs: grid(2, 1),
      }),
    ).toThrow("the other way");
    expect(() => assignQuadratic({ weights: grid(3, 1), costs: grid(2, 1) })).toThrow("no more things");
    expect(() => assignQuadratic({ weights: grid(2, 1), costs: grid(2, 1), fixed: [1, 1] })).toThrow(
      "not taken",
    );
  });
});
