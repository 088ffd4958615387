import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { leastTotalMin } from "../testing/enumerate.ts";
import { smallProblem } from "../testing/problem-arbitrary.ts";
import { routeLowerBound } from "./bound.ts";
import { measureRoute } from "./measure.ts";
import type { RouteProblem } from "./problem.ts";
import { searchRoute } from "./search.ts";

const EFFORT = { steps: 60_000, seed: 1 };

const found = (problem: RouteProblem, effort = EFFORT) => {
  const solution = searchRoute(problem, effort);
  if (solution === null) throw new Error("no tree");
  return { solution, measure: measureRoute(problem, solution) };
};

const lane = (a: number, b: number, lengthMm: number, more: Partial<RouteProblem["lanes"][number]> = {}) => ({
  a,
  b,
  lengthMm,
  minutes: lengthMm / 300,
  maxSquareMm2: 1e9,
  forbidden: [],
  ...more,
});
const at = (...spots: number[]) => ({
  candidates: spots.map((spot) => ({ spot, lengthMm: 50, minutes: 0 })),
});
const wire = (a: number, b: number, classIndex = 0, squareMm2 = 4) => ({ a, b, classIndex, squareMm2 });
const problemOf = (
  some: Pick<RouteProblem, "spots" | "lanes" | "landings" | "wires"> & Partial<RouteProblem>,
) => ({
  splices: [],
  classes: 4,
  apart: [],
  breakoutMin: 0.9,
  breakoutBranches: 4,
  layMinPerM: 0.08,
  fixedMin: 0,
  ...some,
});

describe("searchRoute", () => {
  test("finds the least total on tiny graphs, as trying every tree does; the bound is never above it", () => {
    fc.assert(
      fc.property(smallProblem({ spots: 5, landings: 4 }), (problem) => {
        const { measure } = found(problem);
        const least = leastTotalMin(problem);
        expect(measure.totalMin).toBeCloseTo(least, 6);
        expect(routeLowerBound(problem)).toBeLessThanOrEqual(least + 1e-9);
      }),
      { seed: 20, numRuns: 60 },
    );
  });

  test("gives a tree that joins the ends of every wire; the bound is never above its total", () => {
    fc.assert(
      fc.property(smallProblem({ spots: 14, landings: 9 }), (problem) => {
        const { solution, measure } = found(problem, { steps: 20_000, seed: 1 });
        problem.wires.forEach((w, i) => {
          const spotOf = (terminal: number): number | undefined =>
            terminal < problem.landings.length
              ? problem.landings[terminal]?.candidates[solution.attach[terminal] ?? -1]?.spot
              : problem.splices[0]?.places[solution.spliceAt[0] ?? -1]?.spot;
          let spot = spotOf(w.a);
          for (const index of measure.paths[i] ?? []) {
            const way = problem.lanes[index];
            expect(solution.lanes).toContain(index);
            expect([way?.a, way?.b]).toContain(spot);
            spot = way?.a === spot ? way?.b : way?.a;
          }
          expect(spot).toBe(spotOf(w.b));
        });
        expect(routeLowerBound(problem)).toBeLessThanOrEqual(measure.totalMin + 1e-9);
      }),
      { seed: 21, numRuns: 60 },
    );
  });

  test("a further lane never makes the least total worse", () => {
    fc.assert(
      fc.property(smallProblem({ spots: 5, landings: 4 }), fc.nat(), fc.nat(), (problem, x, y) => {
        const a = x % problem.spots;
        const b = y % problem.spots;
        fc.pre(a !== b);
        const before = found(problem).measure.totalMin;
        const more = { ...problem, lanes: [...problem.lanes, lane(a, b, 40)] };
        expect(found(more).measure.totalMin).toBeLessThanOrEqual(before + 1e-9);
      }),
      { seed: 22, numRuns: 40 },
    );
  });

  test("is the same every time", () => {
    fc.assert(
      fc.property(smallProblem({ spots: 12, landings: 8 }), (problem) => {
        expect(searchRoute(problem, EFFORT)).toEqual(searchRoute(problem, EFFORT));
      }),
      { seed: 23, numRuns: 10 },
    );
  });

  test("one breakout that serves four tails is cheaper than four", () => {
    const { solution, measure } = found(
      problemOf({
        spots: 3,
        lanes: [lane(0, 1, 100), lane(1, 2, 100)],
        landings: [at(0, 1), at(0, 1), at(1), at(1, 2), at(1, 2)],
        wires: [wire(0, 1), wire(1, 2), wire(2, 3), wire(3, 4)],
      }),
    );
    expect(measure.breakouts).toBe(1);
    expect(solution.lanes).toEqual([]);
  });

  test("more tails at one spot than a breakout takes need a further breakout; another spot on the way is as good", () => {
    const ends = {
      spots: 2,
      lanes: [lane(0, 1, 30)],
      landings: [at(0), at(0), at(0), at(1), at(1), at(1), at(0, 1)],
      wires: [0, 1, 2, 3, 4, 5].map((a) => wire(a, a + 1)),
    };
    const breakouts = [1, 2, 3, 4].map((breakoutBranches) => found(problemOf({ ...ends, breakoutBranches })));
    expect(breakouts.map(({ measure }) => measure.breakouts)).toEqual([5, 3, 2, 2]);
    expect([...(breakouts[3]?.measure.branchesAt ?? [])].sort()).toEqual([4, 5]);
  });

  test("keeps a class out of a lane that bars it, though the way round is longer", () => {
    const ring = [lane(0, 1, 100, { forbidden: [2] }), lane(1, 2, 300), lane(2, 0, 300)];
    const ends = { spots: 3, lanes: ring, landings: [at(0), at(1)] };
    expect(found(problemOf({ ...ends, wires: [wire(0, 1, 0)] })).solution.lanes).toEqual([0]);
    expect(found(problemOf({ ...ends, wires: [wire(0, 1, 2)] })).solution.lanes).toEqual([1, 2]);
  });

  test("goes round a lane that is too narrow for its wires, if any way is wide enough", () => {
    const ring = [lane(0, 1, 100, { maxSquareMm2: 7 }), lane(1, 2, 300), lane(2, 0, 300)];
    const ends = { spots: 3, lanes: ring, landings: [at(0), at(1)] };
    expect(found(problemOf({ ...ends, wires: [wire(0, 1)] })).solution.lanes).toEqual([0]);
    expect(found(problemOf({ ...ends, wires: [wire(0, 1), wire(0, 1)] })).solution.lanes).toEqual([1, 2]);
  });

  test("leads classes that must be apart along different lanes where a tree can", () => {
    const { measure } = found(
      problemOf({
        spots: 4,
        lanes: [lane(0, 1, 100), lane(1, 2, 100), lane(1, 3, 100), lane(0, 3, 260)],
        landings: [at(0), at(2), at(3), at(3)],
        wires: [wire(0, 1, 1), wire(2, 3, 2), wire(0, 1, 1)],
        apart: [[1, 2]],
      }),
    );
    expect(measure.penaltyMin).toBe(0);
  });

  test("lays a splice where its wires are shortest", () => {
    const { solution } = found(
      problemOf({
        spots: 4,
        lanes: [lane(0, 1, 100), lane(1, 2, 100), lane(1, 3, 100)],
        landings: [at(0), at(2), at(3)],
        splices: [{ places: [0, 1, 2, 3].map((spot) => ({ spot, penaltyMin: 0 })) }],
        wires: [wire(0, 3), wire(1, 3), wire(2, 3)],
      }),
    );
    expect(solution.spliceAt).toEqual([1]);
  });

  test("there is no tree between parts that nothing joins", () => {
    const apart = problemOf({ spots: 2, lanes: [], landings: [at(0), at(1)], wires: [wire(0, 1)] });
    expect(searchRoute(apart, EFFORT)).toBeNull();
  });
});
