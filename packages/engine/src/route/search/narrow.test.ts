import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { leastTotalMin } from "../testing/enumerate.ts";
import { smallProblem } from "../testing/problem-arbitrary.ts";
import { routeLowerBound } from "./bound.ts";
import { measureRoute } from "./measure.ts";
import { drawnTogether, narrowTo, surroundings } from "./narrow.ts";
import { searchRoute } from "./search.ts";

const EFFORT = { steps: 20_000, seed: 1 };

describe("surroundings", () => {
  test("hold a tree; what is found there costs the same in the whole problem", () => {
    fc.assert(
      fc.property(smallProblem({ spots: 16, landings: 6 }), (problem) => {
        const near = surroundings(problem);
        for (const { candidates } of problem.landings)
          for (const { spot } of candidates) expect(near[spot]).toBe(1);
        const { problem: narrow, widen } = narrowTo(problem, near);
        expect(narrow.spots).toBe(near.reduce((sum, on) => sum + on, 0));
        const found = searchRoute(narrow, EFFORT);
        if (found === null) throw new Error("no tree");
        expect(measureRoute(problem, widen(found)).totalMin).toBeCloseTo(
          measureRoute(narrow, found).totalMin,
          9,
        );
      }),
      { seed: 40, numRuns: 60 },
    );
  });

  test("a landing keeps its sixteen shortest tails", () => {
    const candidates = Array.from({ length: 20 }, (_, spot) => ({ spot, lengthMm: 300 - spot, minutes: 0 }));
    const problem = {
      ...emptyProblem,
      spots: 20,
      landings: [{ candidates }],
    };
    const { problem: narrow, widen } = narrowTo(problem, new Uint8Array(20).fill(1));
    expect(narrow.landings[0]?.candidates.map((c) => c.lengthMm).at(-1)).toBe(296);
    expect(narrow.landings[0]?.candidates).toHaveLength(16);
    expect(widen({ lanes: [], attach: [0], spliceAt: [] }).attach).toEqual([19]);
  });
});

const emptyProblem = {
  lanes: [],
  splices: [],
  wires: [],
  classes: 1,
  apart: [],
  breakoutMin: 0.9,
  breakoutBranches: 4,
  layMinPerM: 0.08,
  fixedMin: 0,
};

describe("drawnTogether", () => {
  test("a bound for it is a bound for the whole problem, whichever spots count as near", () => {
    fc.assert(
      fc.property(
        smallProblem({ spots: 5, landings: 4 }),
        fc.infiniteStream(fc.nat({ max: 2 })),
        (problem, draws) => {
          const lanes = problem.lanes.map((lane) => ({
            ...lane,
            minutes: draws.next().value === 0 ? 0 : lane.minutes,
          }));
          const crossed = { ...problem, lanes };
          const near = Uint8Array.from({ length: problem.spots }, () => (draws.next().value === 0 ? 1 : 0));
          const less = drawnTogether(crossed, near);
          expect(less.spots).toBeLessThanOrEqual(problem.spots);
          expect(routeLowerBound(less)).toBeLessThanOrEqual(leastTotalMin(crossed) + 1e-9);
        },
      ),
      { seed: 41, numRuns: 60 },
    );
  });
});
