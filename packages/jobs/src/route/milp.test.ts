import { measureRoute, type RouteProblem, routeLowerBound, searchRoute } from "@pinwright/engine";
import { describe, expect, test } from "vitest";
import { INSTANCE_KINDS, routeInstance } from "./instances.ts";
import { routeMilp } from "./milp.ts";

const SMALL = { spots: 9, landings: 4, wires: 5 };

describe("routeMilp", () => {
  test.each(INSTANCE_KINDS.map((kind, i) => [kind, i] as const))(
    "%s-%i: the search comes within 1 % of the proven optimum, and no bound is above it",
    async (kind, variant) => {
      const problem = routeInstance(kind, SMALL, variant);
      const proof = await routeMilp(problem);
      const found = searchRoute(problem, { steps: 200_000, seed: 1 });
      if (found === null) throw new Error("no tree");
      const { totalMin, penaltyMin } = measureRoute(problem, found);
      if (proof.valueMin === null) {
        expect(proof.status).toBe("infeasible");
        expect(penaltyMin).toBeGreaterThan(0);
        return;
      }
      expect(proof.status).toBe("optimal");
      expect(proof.boundMin).toBeCloseTo(proof.valueMin, 4);
      expect(penaltyMin).toBe(0);
      expect(totalMin).toBeGreaterThanOrEqual(proof.valueMin - 1e-6);
      expect(totalMin).toBeLessThanOrEqual(proof.valueMin * 1.01);
      expect(routeLowerBound(problem)).toBeLessThanOrEqual(proof.valueMin + 1e-6);
    },
  );

  test("starts from a tree that is known, and proves the same optimum", async () => {
    const problem = routeInstance("scatter", SMALL, 2);
    const start = searchRoute(problem, { steps: 50_000, seed: 1 });
    if (start === null) throw new Error("no tree");
    const cold = await routeMilp(problem);
    const warm = await routeMilp(problem, { start });
    expect(warm.status).toBe("optimal");
    expect(warm.valueMin).toBeCloseTo(cold.valueMin ?? 0, 6);
  });

  test("a narrow lane and classes that must be apart are rules, not prices", async () => {
    const lane = (a: number, b: number, lengthMm: number, maxSquareMm2 = 1e9) => ({
      a,
      b,
      lengthMm,
      minutes: lengthMm / 300,
      maxSquareMm2,
      forbidden: [],
    });
    const at = (spot: number) => ({ candidates: [{ spot, lengthMm: 50, minutes: 0 }] });
    const wire = (classIndex: number) => ({ a: 0, b: 1, classIndex, squareMm2: 4 });
    const ring: RouteProblem = {
      spots: 3,
      lanes: [lane(0, 1, 100, 7), lane(1, 2, 300), lane(2, 0, 300)],
      landings: [at(0), at(1)],
      splices: [],
      wires: [wire(0), wire(0)],
      classes: 2,
      apart: [[0, 1]],
      breakoutMin: 0.9,
      breakoutBranches: 4,
      layMinPerM: 0.08,
      fixedMin: 0.3,
    };
    const round = await routeMilp(ring);
    expect(round.solution?.lanes).toEqual([1, 2]);
    expect(round.valueMin).toBeCloseTo(0.3 + 2 + 0.08 * 2 * 0.7, 9);
    expect((await routeMilp({ ...ring, wires: [wire(0), wire(1)] })).status).toBe("infeasible");
  });
});
