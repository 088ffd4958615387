import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cutFaults } from "./check.ts";
import { type CuttingEffort, type CuttingPlan, fewestSheets } from "./fewest.ts";
import { fenceSettings } from "./plan.ts";
import type { CuttingProblem } from "./problem.ts";

const NO_TRIM = { leftMm: 0, rightMm: 0, bottomMm: 0, topMm: 0 };

const planOf = (problem: CuttingProblem, effort: CuttingEffort): CuttingPlan => {
  const found = fewestSheets(problem, effort);
  if (!found.found) throw new Error("no plan");
  expect(cutFaults(found.plans, problem)).toEqual([]);
  return found;
};

describe("laws", () => {
  const piece = fc.record({
    widthMm: fc.integer({ min: 20, max: 300 }),
    heightMm: fc.integer({ min: 20, max: 300 }),
    count: fc.integer({ min: 0, max: 4 }),
    mayTurn: fc.boolean(),
  });
  const sheet = fc.record({
    widthMm: fc.integer({ min: 320, max: 600 }),
    heightMm: fc.integer({ min: 320, max: 600 }),
    trim: fc.constantFrom(NO_TRIM, { leftMm: 5, rightMm: 6, bottomMm: 4, topMm: 3.5 }),
    count: fc.constant(null),
    cost: fc.constantFrom(1, 2.5, 3),
  });
  const problem = fc.record({
    pieces: fc.array(piece, { minLength: 1, maxLength: 6 }),
    sheets: fc.array(sheet, { minLength: 1, maxLength: 3 }),
    kerfMm: fc.constantFrom(0, 2.5, 3.2),
    stages: fc.constantFrom(2, 3, null),
    firstCut: fc.constantFrom("rip" as const, "cross" as const, "either" as const),
    lastTrim: fc.constant(true),
  });
  const brief = { steps: 10_000, settingSteps: 5_000 };
  const scaled = (p: CuttingProblem, by: number): CuttingProblem => ({
    ...p,
    kerfMm: p.kerfMm * by,
    pieces: p.pieces.map((x) => ({ ...x, widthMm: x.widthMm * by, heightMm: x.heightMm * by })),
    sheets: p.sheets.map((x) => ({
      ...x,
      widthMm: x.widthMm * by,
      heightMm: x.heightMm * by,
      trim: {
        leftMm: x.trim.leftMm * by,
        rightMm: x.trim.rightMm * by,
        bottomMm: x.trim.bottomMm * by,
        topMm: x.trim.topMm * by,
      },
    })),
  });

  it("every plan can be sawn, costs no less than the bound, and states its settings", () => {
    fc.assert(
      fc.property(problem, (p) => {
        const { plans, cost, lowerBound, settings } = planOf(p, brief);
        expect(lowerBound).toBeLessThanOrEqual(cost);
        expect(settings).toEqual(fenceSettings(plans));
        expect(cost).toBeCloseTo(plans.reduce((sum, plan) => sum + (p.sheets[plan.sheet]?.cost ?? 0), 0));
      }),
      { numRuns: 60, seed: 1 },
    );
  });

  it("lengths in another measure give the same cost and bound, and the same problem the same plan", () => {
    fc.assert(
      fc.property(problem, fc.constantFrom(2, 10), (p, by) => {
        const plan = planOf(p, brief);
        expect(planOf(p, brief)).toEqual(plan);
        const { cost, lowerBound } = planOf(scaled(p, by), brief);
        expect({ cost, lowerBound }).toEqual({ cost: plan.cost, lowerBound: plan.lowerBound });
      }),
      { numRuns: 20, seed: 2 },
    );
  });
});
